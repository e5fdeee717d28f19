"""Where one entry of a line ends and the next begins, and the place that is typed before it."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from binder.cards.turns import is_mark
from binder.cards.words import ARROWS, alike

Span = tuple[int, int]

_ARROW = rf"[-–—=~]{{0,3}}>+|[{ARROWS}]"
_BETWEEN = re.compile(
    rf"(?P<and>&|(?<![\w'’])(?:and|then)(?![\w'’]))|{_ARROW}|[,;|/\n\r]", re.IGNORECASE
)
_DASH = re.compile(r"(?<!\S)[-–—]+(?!\S)")
_NUMBER_DASH = re.compile(r"\s*(?P<place>\d{1,3})\s*[-–—]+\s")
_NUMBER_ARROW = re.compile(
    rf"(?:^|(?<=[,;\n\r]))\s*(?:\d{{1,3}}\s*[:=.)]\s*)?\d{{1,3}}\s*(?:{_ARROW}|(?<=\d)[/|](?=\s))"
)
_LONE_NUMBER = re.compile(r"(?:.*[:=.)\]+])?\s*\d{1,3}\s*")
_MARK = re.compile(
    r"(?<![^\s+,;|/&>(])(?:(?P<named>place|position|pos|card)\.?\s+)?[#(\[]?(?P<place>\d{1,3})"
    r"(?:st|nd|rd|th)?\s*(?:(?P<sign>[.)\]]*[:=])(?:\s*(?P<there>\+))?"
    r"|(?P<point>\.[)\]]*(?!\d)|[)\]]+))|(?P<beside>\+)",
    re.IGNORECASE,
)
"""What begins a stretch: a place, a plus sign, or both."""
_OPENING = re.compile(
    r"\s*(?:(?:the|my|our|today's)\s+)?(?:cards?|reading|spread|draw|layout)\s*:", re.IGNORECASE
)
"""What says no more than that cards follow."""
_DOUBT = re.compile(r"\?")
_LABEL = re.compile(r"[:=]")


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of the line between separators, typed places and plus signs."""

    start: int
    inner: int
    """Where the words begin, after place and plus sign."""
    end: int
    place: int | None = None
    beside: bool = False
    pointed: bool = False
    """Whether a point or bracket stands after the place, as in a numbered list."""
    named: bool = False
    """Whether the word stands before it, as in 'place 4:'."""
    joint: str = ","
    """What parts it from the stretch before: ',' also for the like, 'and', '-' or ''."""
    doubt: str = ""
    """'label' where words name what no card is, 'turn' where two cards could be reversed, 'asked'
    where a question mark says that the writer was not sure.
    """
    all_turned: bool = False
    """Whether its words say that all cards of the line are reversed."""

    @property
    def marked(self) -> bool:
        """Whether a place or a plus sign begins it, so that a card must follow."""
        return self.beside or self.place is not None


@dataclass(frozen=True, slots=True)
class Ground:
    """The text to cut, and what is known of it."""

    text: str
    end: int
    held: Sequence[Span]
    """Titles of the deck with marks in them, which are not cut."""
    is_card: Callable[[int, int], bool]
    """Whether what stands there is read as exactly one card."""
    is_name: Callable[[str], bool]
    """Whether a folded text is the deck's own name of a card."""

    def free(self, found: re.Match[str]) -> bool:
        """Whether it lies in no title."""
        return all(found.end() <= start or end <= found.start() for start, end in self.held)

    def folded(self, start: int, end: int) -> str:
        """What stands there, as it is compared."""
        text = self.text[start:end]
        return alike(text) if text.strip() else ""


def with_dashes(text: str, held: Sequence[Span]) -> str:
    """The text, as long as it was, with a dash for an arrow or stroke after a number: '4 -> qc'.

    There it does not part two cards; the number may be a place.
    """

    def dashed(found: re.Match[str]) -> str:
        if any(start < found.end() and found.start() < end for start, end in held):
            return found[0]
        head = found[0].rstrip("->=~–—/|" + ARROWS)
        return head + "-" * (len(found[0]) - len(head))

    return _NUMBER_ARROW.sub(dashed, text)


def stretches(ground: Ground) -> list[Stretch]:
    """The stretches of the text; those without a word or place are left out."""
    opening = _OPENING.match(ground.text, 0, ground.end)
    begun = opening.end() if opening and ground.free(opening) else 0
    entries = list(_entries(ground, begun))
    listed = _listed(ground, entries)
    out: list[Stretch] = []
    for start, end, joint in entries:
        for made in _dashed(ground, (start, end), joint, listed, crowd=len(entries)):
            _put(ground, out, made)
    return [_asked(ground, _labelled(ground, each)) for each in out]


def _entries(ground: Ground, begun: int) -> Iterator[tuple[int, int, str]]:
    joint = ","
    for cut in _BETWEEN.finditer(ground.text, begun, ground.end):
        if ground.free(cut):
            if ground.text[begun : cut.start()].strip():
                yield begun, cut.start(), joint
                joint = ","
            begun = cut.end()
            joint = "and" if cut["and"] else joint
    if ground.text[begun : ground.end].strip():
        yield begun, ground.end, joint


def _listed(ground: Ground, entries: Sequence[tuple[int, int, str]]) -> bool:
    """Whether the line is a list '1 - 3w, 2 - hermit', a dash after each place."""
    heads = [_NUMBER_DASH.match(ground.text, start, end) for start, end, _ in entries]
    places = [int(head["place"]) for head in heads if head]
    run = list(range(places[0], places[0] + len(entries))) if places else []
    return len(entries) > 1 and places == run


def _dashed(ground: Ground, entry: Span, joint: str, listed: bool, crowd: int) -> Iterator[Stretch]:
    """The stretches of an entry, parted at dashes that stand between cards."""
    start, end = entry
    head = _NUMBER_DASH.match(ground.text, start, end) if listed else None
    inner = head.end() if head else start
    parts = list(_between_dashes(ground, inner, end))
    unread = [not _readable(ground, *each) for each in parts]
    label = len(parts) > 1 and any(unread) and (crowd > 1 or len(parts) == 2)
    if label:
        parts = [(inner, end)]
    for number, (first, last) in enumerate(parts):
        made = list(_placed(ground, first, last, joint if number == 0 else "-"))
        if head and number == 0:
            made[0] = replace(made[0], start=start, place=int(head["place"]), pointed=True)
        yield from (replace(each, doubt="label") if label else each for each in made)


def _between_dashes(ground: Ground, start: int, end: int) -> Iterator[Span]:
    begun, found = start, False
    for dash in _DASH.finditer(ground.text, start, end):
        before = ground.text[begun : dash.start()]
        lone = begun == start and _LONE_NUMBER.fullmatch(before)
        if ground.free(dash) and not lone:
            if before.strip():
                found = True
                yield begun, dash.start()
            begun = dash.end()
    if ground.text[begun:end].strip():
        yield begun, end
    elif not found:  # a dash in a card's stead keeps the place
        yield start, end


def _readable(ground: Ground, start: int, end: int) -> bool:
    mark = _MARK.match(ground.text, start, end)
    inner = mark.end() if mark else start
    return is_mark(ground.folded(start, end)) or ground.is_card(inner, end)


def _placed(ground: Ground, start: int, end: int, joint: str) -> Iterator[Stretch]:
    """The stretches of an entry, parted at typed places and plus signs."""
    open_ = Stretch(start, start, end, joint=joint)
    for mark in _MARK.finditer(ground.text, start, end):
        if ground.free(mark) and (not mark["point"] or _heads(ground, open_, mark)):
            blank = not ground.text[open_.inner : mark.start()].strip()
            if open_.marked or not blank:
                yield replace(open_, end=mark.start())
                joint = "+" if mark["beside"] else ""
            place = int(mark["place"]) if mark["place"] else None
            beside = bool(mark["there"] or mark["beside"])
            pointed, named = bool(mark["point"]), bool(mark["named"])
            open_ = Stretch(mark.start(), mark.end(), end, place, beside, pointed, named, joint)
    yield open_


def _heads(ground: Ground, before: Stretch, mark: re.Match[str]) -> bool:
    """Whether a number and a point are a place: at the head of an entry, or next in a list."""
    if not ground.text[before.start : mark.start()].strip():
        return True
    return before.pointed and before.place is not None and int(mark["place"]) == before.place + 1


def _put(ground: Ground, out: list[Stretch], made: Stretch) -> None:
    """Add a stretch; one that only turns a card goes to the stretch before it."""
    said = ground.folded(made.inner, made.end)
    mark = is_mark(said) and not made.marked and not ground.is_name(said)
    if not (mark and out and ground.folded(out[-1].inner, out[-1].end)):
        out.append(made)
        return
    unsure = made.joint == "and" or out[-1].joint == "and" or out[-1].beside
    last = replace(out[-1], end=made.end)
    out[-1] = replace(last, doubt="turn") if unsure else last


def _labelled(ground: Ground, made: Stretch) -> Stretch:
    """A stretch with a word and a colon before its card, which is no place."""
    colons = _LABEL.finditer(ground.text, made.inner, made.end)
    colon = next((each for each in colons if ground.free(each)), None)
    if colon is None:
        return made
    if is_mark(ground.folded(made.inner, colon.start())):
        return replace(made, doubt="label", all_turned=True)
    return made if ground.is_card(made.inner, made.end) else replace(made, doubt="label")


def _asked(ground: Ground, made: Stretch) -> Stretch:
    mark = _DOUBT.search(ground.text, made.inner, made.end)
    return replace(made, doubt=made.doubt or "asked") if mark and ground.free(mark) else made
