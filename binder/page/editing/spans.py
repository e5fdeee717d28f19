"""What is what within one line of Markdown, as places in the line; for the live styles.

Nothing is rendered here: the marks stay where they are, and are told from the words they mark.
"""

import re
from collections.abc import Iterator
from typing import Literal, NamedTuple

from binder.page.lines import TICK, Kind, Where, step

Role = Literal[
    "blank", "text", "heading", "quote", "item", "table", "rule", "code", "fence", "note"
]
"""What the line is as a whole; 'note' is a footnote's own line."""

Style = Literal[
    "mark", "bold", "italic", "struck", "code", "link", "target", "hidden", "call",
    "bullet", "number", "box", "ticked",
]  # fmt: skip
"""'mark' is a sign of Markdown, 'target' an address and 'hidden' the uid in it with its colon,
'call' the call of a footnote; 'box' and 'ticked' are tick boxes."""


class Span(NamedTuple):
    """A stretch of the line in one style; stretches may lie within each other."""

    start: int
    end: int
    style: Style


class Pair(NamedTuple):
    """Marks around some words: where the opening and the closing ones stand."""

    style: Style
    open: int
    start: int
    end: int
    close: int


class SpannedLine(NamedTuple):
    """One line: its role, how deep a heading, quote or item lies, where its words start, and its
    stretches in order."""

    role: Role
    level: int
    words: int
    spans: tuple[Span, ...]


QUOTE = re.compile(r"(?: {0,3}> ?)+")
ITEM = re.compile(r"([ \t]*)([-*+]|\d{1,9}\.)([ \t]+|$)")
HEADING = re.compile(r" {0,3}(#{1,6})(?:[ \t]+|$)")
NOTE = re.compile(r"\[\^[^\]\s]+\]:[ \t]*")
TABLE = re.compile(r" {0,3}\|")
TABLE_RULE = re.compile(r" {0,3}\|?[ \t]*:?-+:?[ \t]*(?:\|[ \t]*:?-+:?[ \t]*)*\|?[ \t]*")
_RULE = re.compile(r" {0,3}([-*_])[ \t]*(?:\1[ \t]*){2,}")
_UID = re.compile(r":[0-9a-f]{8}-(?:[0-9a-f]{4}-){3}[0-9a-f]{12}", re.IGNORECASE)
_TOKEN = re.compile(
    r"""(?P<escape>\\[!-/:-@\[-`{-~])
    |(?P<ticks>(?<!`)`+(?!`))
    |(?P<call>\[\^[^\]\s]+\](?!:))
    |(?P<picture>!?)\[(?P<label>(?:\\.|[^\[\]\\]|\[[^\[\]]*\])*)\]
     \((?P<to>[^()\s]*(?:\([^()\s]*\)[^()\s]*)*)(?P<title>[ \t]+"[^"]*")?\)
    |<(?P<address>(?:https?://|mailto:)[^\s<>]+)>
    |(?P<run>\*+|_+|~~)""",
    re.VERBOSE,
)
_PIPE = re.compile(r"(?<!\\)\|")


def line(text: str, before: Where) -> tuple[SpannedLine, Where]:
    """One line, and what it means for the next; `before` is what the lines above say."""
    kind, after = step(text, before)
    return _line(text, kind), after


def _line(text: str, kind: Kind) -> SpannedLine:
    if kind != "text":
        role: Role = "code" if kind == "code" else "fence"
        return SpannedLine(role, 0, 0, (Span(0, len(text), "code" if role == "code" else "mark"),))
    if not text.strip():
        return SpannedLine("blank", 0, len(text), ())
    quote = QUOTE.match(text)
    at = quote.end() if quote else 0
    depth = text[:at].count(">")
    if TABLE.match(text, at):
        return _table(text, at)
    if _RULE.fullmatch(text[at:]):
        return SpannedLine("rule", 0, at, (Span(0, len(text), "mark"),))
    lead = [Span(0, at, "mark")] if at else []
    for found in (_heading(text, at), _item(text, at), _note(text, at)):
        if found is not None:
            return found._replace(spans=(*lead, *found.spans))
    return SpannedLine("quote" if depth else "text", depth, at, (*lead, *inline(text, at)))


def _heading(text: str, at: int) -> SpannedLine | None:
    match = HEADING.match(text, at)
    if match is None:
        return None
    spans = (Span(at, match.end(), "mark"), *inline(text, match.end()))
    return SpannedLine("heading", len(match[1]), match.end(), spans)


def _item(text: str, at: int) -> SpannedLine | None:
    match = ITEM.match(text, at)
    if match is None:
        return None
    depth = (len(match[1].expandtabs(4)) + 3) // 4
    style: Style = "number" if match[2][0].isdigit() else "bullet"
    spans = [Span(match.start(2), match.end(2), style)]
    words, box = match.end(), TICK.match(text, at)
    if box:
        ticked = box[2] != " "
        spans.append(Span(box.end(1), box.end(), "ticked" if ticked else "box"))
        words = min(len(text), box.end() + 1)
    return SpannedLine("item", depth, words, (*spans, *inline(text, words)))


def _note(text: str, at: int) -> SpannedLine | None:
    match = NOTE.match(text, at)
    if match is None:
        return None
    return SpannedLine(
        "note", 0, match.end(), (Span(at, match.end(), "mark"), *inline(text, match.end()))
    )


def _table(text: str, at: int) -> SpannedLine:
    if TABLE_RULE.fullmatch(text, at):
        return SpannedLine("table", 1, at, (Span(0, len(text), "mark"),))
    pipes = [Span(m.start(), m.end(), "mark") for m in _PIPE.finditer(text, at)]
    return SpannedLine("table", 0, at, (*pipes, *inline(text, at)))


def inline(text: str, at: int = 0, end: int | None = None) -> list[Span]:
    """The stretches among the words of a line, from `at` to `end`."""
    found: list[Span] = []
    for pair in pairs(text, at, end):
        found += [
            Span(pair.open, pair.start, "mark"),
            Span(pair.start, pair.end, pair.style),
            *_closing(text, pair),
        ]
    for match in _tokens(text, at, len(text) if end is None else end):
        if match["call"]:
            found.append(Span(match.start(), match.end(), "call"))
        elif match["escape"]:
            found.append(Span(match.start(), match.start() + 1, "mark"))
    return sorted(found)


def _closing(text: str, pair: Pair) -> Iterator[Span]:
    """The closing marks; of a link its address, and in that the uid that nobody reads."""
    if pair.style != "link":
        yield Span(pair.end, pair.close, "mark")
        return
    yield Span(pair.end, pair.close, "target")
    for uid in _UID.finditer(text, pair.end, pair.close):
        yield Span(uid.start(), uid.end(), "hidden")


def pairs(text: str, at: int = 0, end: int | None = None) -> list[Pair]:
    """The marked words of a line: bold, italic, struck, code and links, with their marks."""
    stop = len(text) if end is None else end
    found: list[Pair] = []
    runs: list[_Run] = []
    for match in _tokens(text, at, stop):
        if match["run"]:
            runs.append(_run(text, match, at, stop))
        elif match["ticks"]:
            start, size = match.start(), len(match["ticks"])
            found.append(Pair("code", start, start + size, match.end() - size, match.end()))
        elif match["address"]:
            start = match.start()
            found.append(Pair("link", start, start + 1, match.end() - 1, match.end()))
        elif match["to"] is not None:
            start, label_end = match.start("label"), match.end("label")
            found.append(Pair("link", match.start(), start, label_end, match.end()))
            found += pairs(text, start, label_end)
    return sorted([*found, *_emphasis(runs)], key=lambda pair: (pair.open, -pair.close))


def _tokens(text: str, at: int, end: int) -> Iterator[re.Match[str]]:
    """The signs from `at` to `end`; for code the match reaches to its closing ticks."""
    while (match := _TOKEN.search(text, at, end)) is not None:
        if match["ticks"]:
            size = len(match["ticks"])
            whole = re.compile(rf"(?P<ticks>`{{{size}}})(?!`).*?(?<!`)`{{{size}}}(?!`)")
            code = whole.match(text, match.start(), end)
            at = code.end() if code else match.end()
            if code:
                yield _Code(code)  # type: ignore[misc]
            continue
        at = match.end()
        yield match


class _Code:
    """A stretch of code, answering like a match in which only the ticks were found."""

    def __init__(self, match: re.Match[str]) -> None:
        self.start, self.end, self._ticks = match.start, match.end, match["ticks"]

    def __getitem__(self, name: str) -> str | None:
        return self._ticks if name == "ticks" else None


class _Run:
    """A run of stars or underscores that may open or close emphasis."""

    def __init__(self, sign: str, start: int, end: int, opens: bool, closes: bool) -> None:
        self.sign, self.start, self.end = sign, start, end
        self.opens, self.closes = opens, closes


def _run(text: str, match: re.Match[str], at: int, end: int) -> _Run:
    before = text[match.start() - 1] if match.start() > at else " "
    after = text[match.end()] if match.end() < end else " "
    opens, closes = not after.isspace(), not before.isspace()
    if match[0][0] == "_":
        opens, closes = opens and not before.isalnum(), closes and not after.isalnum()
    return _Run(match[0][0], match.start(), match.end(), opens, closes)


def _emphasis(runs: list[_Run]) -> Iterator[Pair]:
    """Runs matched with the nearest run before that can open the same; two signs are bold."""
    opened: list[_Run] = []
    for run in runs:
        while run.closes and run.start < run.end:
            opener = next((one for one in reversed(opened) if one.sign == run.sign), None)
            if opener is None:
                break
            yield _matched(opener, run)
            del opened[opened.index(opener) + (opener.start < opener.end) :]
        if run.opens and run.start < run.end:
            opened.append(run)


def _matched(opener: _Run, closer: _Run) -> Pair:
    """Take as many signs from both as they share, two at most."""
    size = min(2, opener.end - opener.start, closer.end - closer.start)
    pair = Pair(
        "struck" if opener.sign == "~" else "bold" if size == 2 else "italic",
        opener.end - size, opener.end, closer.start, closer.start + size,
    )  # fmt: skip
    opener.end -= size
    closer.start += size
    return pair
