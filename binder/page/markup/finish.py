"""The last pass over cleaned HTML: tick boxes, pictures kept out, card names made links.

Everything is done in one walk over the tags. Card names are looked for once in all the words of
the leaf together, so that a name half in italics is found and its neighbours can be judged.
"""

from bisect import bisect_right
from collections.abc import Callable, Container, Sequence
from html import escape, unescape
from typing import NamedTuple, Protocol

from binder.page.address import Scheme, leads_to
from binder.page.markup.blocks import DONE, OPEN
from binder.page.markup.prepare import BOX
from binder.page.markup.tags import DEEPEST, TOKEN, VOID, attributes


class Said(Protocol):
    """A card name found in words: where it starts, where it ends, and the card's key."""

    @property
    def start(self) -> int:
        """Index of its first character."""

    @property
    def end(self) -> int:
        """Index after its last character."""

    @property
    def key(self) -> str:
        """Key of the card, as 'major-17'."""


LinkCards = Callable[[str], Sequence[Said]]
Pictures = Callable[[str], tuple[int, int] | None]

OUTSIDE = "picture kept out: it lies outside the binder"
MISSING = "picture missing: this binder does not hold it"
GAP = "\n\n"
"""Stands between the words of two blocks when card names are looked for."""
HIDDEN = "\N{OBJECT REPLACEMENT CHARACTER}"
"""Stands for a link or code among the words when card names are looked for."""

_INLINE = frozenset({"em", "strong", "s", "sup", "sub", "small", "b", "i", "del", "strike", "a"})
_INLINE_OR_CODE = _INLINE | {"code"}
_SAME = {"b": "strong", "i": "em", "del": "s", "strike": "s"}
_CLOSED = ("a", "code", "pre")


class _Run(NamedTuple):
    """A stretch of words: its place among the pieces, where it starts in all words, what stands
    between it and the one before, itself."""

    piece: int
    start: int
    gap: str
    words: str


class Finish:
    """One walk over one leaf."""

    def __init__(
        self, link_cards: LinkCards | None, pictures: Pictures | None, unlinked: Container[str]
    ) -> None:
        self.link_cards = link_cards
        self.pictures = pictures
        self.unlinked = unlinked
        self.pieces: list[str] = []
        self.open: list[str] = []
        self.closed = 0
        self.runs: list[_Run] = []
        self.length = 0
        self.gap = ""

    def html(self, cleaned: str) -> str:
        """The finished HTML of what the sanitiser gave."""
        at = skipped = 0
        for match in TOKEN.finditer(cleaned):
            if match.start() > at:
                self.text(cleaned[at : match.start()])
            at = match.end()
            closing, name, written = match.groups()
            if closing:
                if skipped:
                    skipped -= 1
                else:
                    self.shut()
            elif name in VOID:
                self.void(name, written)
            elif len(self.open) >= DEEPEST:
                skipped += 1
            else:
                self.start(name, written)
        if at < len(cleaned):
            self.text(cleaned[at:])
        if self.link_cards and self.runs:
            self.link(self.link_cards)
        return "".join(self.pieces)

    def start(self, name: str, written: str) -> None:
        """An opening tag; a link that goes nowhere is left out and its words stay."""
        if name == "a" and "href=" not in written:
            self.open.append("")
            return
        name = _SAME.get(name, name)
        self.open.append(name)
        if name in _CLOSED or name in self.unlinked:
            self.closed += 1
        if name not in _INLINE_OR_CODE:
            self.gap = GAP
        self.pieces.append(f"<{name}{written}>")

    def shut(self) -> None:
        """A closing tag, of whatever was opened last."""
        name = self.open.pop()
        if not name:
            return
        if name in _CLOSED or name in self.unlinked:
            self.closed -= 1
        if name not in _INLINE_OR_CODE:
            self.gap = GAP
        self.pieces.append(f"</{name}>")

    def void(self, name: str, written: str) -> None:
        """A tag that holds nothing: a line break, a rule, a picture."""
        self.gap = GAP
        self.pieces.append(self.picture(attributes(written)) if name == "img" else f"<{name}>")

    def picture(self, given: dict[str, str]) -> str:
        """A picture of the binder, or the small note that stands where one was kept out."""
        alt = given.get("alt", "").strip()
        source = given.get("src", "")
        if not source:
            return _note(alt, OUTSIDE)
        size = ""
        if self.pictures:
            drawn = self.pictures(leads_to(source, Scheme.FILE))
            if drawn is None:
                return _note(alt, MISSING)
            size = f' width="{drawn[0]}" height="{drawn[1]}"'
        title = f' title="{escape(given["title"])}"' if given.get("title") else ""
        return f'<img src="{source}" alt="{escape(alt)}"{title}{size}>'

    def text(self, words: str) -> None:
        """A stretch of words, entities still in it."""
        if "\x02" in words:
            words = self.boxes(words)
        if self.closed:
            if not self.gap:
                self.gap = HIDDEN
        elif self.link_cards and not (self.gap == GAP and words.isspace()):
            self.remember(unescape(words) if "&" in words else words)
        self.pieces.append(words)

    def remember(self, words: str) -> None:
        """Keep a stretch in which card names are to be looked for."""
        if not self.runs:
            self.gap = ""
        self.length += len(self.gap)
        self.runs.append(_Run(len(self.pieces), self.length, self.gap, words))
        self.length += len(words)
        self.gap = ""

    def boxes(self, words: str) -> str:
        """A tick box at the start of a list item becomes a link; anywhere else it is restored."""
        box = BOX.match(words.lstrip())
        if box and (self.open[-1:] == ["li"] or self.open[-2:] == ["li", "p"]):
            glyph = OPEN if box[2] == " " else DONE
            self.pieces.append(f'<a href="{Scheme.TICK.to(box[1])}">{glyph}</a>')
            words = words.lstrip()[box.end() :]
        return BOX.sub(r"[\2]", words)

    def link(self, link_cards: LinkCards) -> None:
        """Look for card names once in all the words, and make each a link where it stands."""
        everything = "".join(run.gap + run.words for run in self.runs)
        starts = [run.start for run in self.runs]
        cuts: dict[int, list[tuple[int, int, str]]] = {}
        reached = 0
        for said in sorted(link_cards(everything), key=lambda said: said.start):
            if said.start < reached or GAP in everything[said.start : said.end]:
                continue
            reached = said.end
            for index in range(bisect_right(starts, said.start) - 1, len(starts)):
                if starts[index] >= said.end:
                    break
                cuts.setdefault(index, []).append((said.start, said.end, said.key))
        for index, found in cuts.items():
            self.pieces[self.runs[index].piece] = _linked(self.runs[index], found)


def _linked(run: _Run, found: list[tuple[int, int, str]]) -> str:
    """The HTML of one stretch with its card names as links."""
    words = run.words
    made, at = [], 0
    for start, end, key in found:
        first, last = max(0, start - run.start), min(len(words), end - run.start)
        name = words[first:last].strip()
        if not name:
            continue
        first = words.index(name, first)
        made.append(escape(words[at:first], quote=False))
        to = Scheme.CARD.to(escape(key))
        made.append(f'<a href="{to}" class="said">{escape(name, quote=False)}</a>')
        at = first + len(name)
    return "".join(made) + escape(words[at:], quote=False)


def _note(alt: str, why: str) -> str:
    """The small note in the place of a picture."""
    return (
        f"<small>{escape(alt, quote=False)} ({why})</small>" if alt else f"<small>({why})</small>"
    )
