"""The tree that print walks: sanitised HTML as lists and dictionaries that JSON can hold.

`blocks(to_html(text))` gives a list of BLOCKS. Every dictionary has a kind under 't'; `c` is
always a list of INLINES unless said otherwise. No key is ever missing and none is null.

Blocks
    {'t': 'p',     'c': [...]}
    {'t': 'h',     'level': 1..6, 'c': [...]}
    {'t': 'ul',    'tight': bool, 'items': [[BLOCK, ...], ...]}
    {'t': 'ol',    'tight': bool, 'start': int, 'items': [[BLOCK, ...], ...]}
    {'t': 'quote', 'c': [BLOCK, ...]}
    {'t': 'table', 'align': ['left' | 'center' | 'right' | '', ...],   one a column
                   'head': [[INLINE, ...], ...],                       one a column; may be []
                   'rows': [[[INLINE, ...], ...], ...]}                rows of cells
    {'t': 'pre',   'text': str}               line ends kept, no final line end
    {'t': 'hr'}
    {'t': 'img',   'file': str, 'alt': str}   a picture alone in its paragraph
    {'t': 'note',  'c': [...]}                the program speaking: set it small

A list is tight when none of its items was written with empty lines. An item may be []. Every row
of a table, the head too unless it is [], has as many cells as 'align'. Notes that nothing calls
come as ordinary blocks at the very end.

Inlines
    {'t': 'text',   's': str}                 line ends within are spaces
    {'t': 'em',     'c': [...]}   {'t': 'strong', 'c': [...]}   {'t': 'strike', 'c': [...]}
    {'t': 'sup',    'c': [...]}   {'t': 'sub',    'c': [...]}
    {'t': 'code',   's': str}
    {'t': 'link',   'to': str, 'said': bool, 'c': [...]}
                    'to' starts with card: leaf: source: file: http: https: or mailto:;
                    'said' marks a card name recognised in prose (print may leave it unmarked)
    {'t': 'foot',   'n': int, 'again': bool, 'c': [BLOCK, ...]}
                    a footnote where it is called; n counts from 1 in the order of first calls.
                    A later call of the same note has 'again' true and 'c' empty.
                    A call within a footnote to a note already open has 'again' true as well.
    {'t': 'br'}
    {'t': 'img',    'file': str, 'alt': str}  'file' is the UUID alone
    {'t': 'tick',   'done': bool}
    {'t': 'note',   'c': [...]}               small words of the program within a line
"""

import re
from collections.abc import Iterable
from typing import Any

from binder.page.address import Scheme, leads_to
from binder.page.markup.tags import Node, tree

Block = dict[str, Any]
"""One block of the tree described above."""
Inline = dict[str, Any]
"""One inline of the tree described above."""

DONE = "\N{BLACK SQUARE}"
"""The glyph of a ticked box, one that our own letters have."""
OPEN = "\N{WHITE SQUARE}"
"""The glyph of an empty box."""

_PLAIN_BOX = frozenset({"div", "thead", "tbody"})
_BLOCKS = frozenset(
    {"p", "h1", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "blockquote", "table", "pre", "hr"}
)
_SAME = ("em", "strong", "sup", "sub")
_WRAPS = {"s": "strike", "small": "note"} | {name: name for name in _SAME}
_SPACES = re.compile(r"[ \t\r\n\f]+")


def blocks(html: str) -> list[Block]:
    """The blocks of what `to_html` gave; the tree is described at the top of this module."""
    root = tree(html)
    walk = _Walk(_notes(root))
    return walk.flow(root.kids) + walk.uncalled()


def _notes(node: Node) -> dict[str, Node]:
    """The footnotes by the id they are called by, as {'#fn:1': item}."""
    found: dict[str, Node] = {}
    for kid in node.elements():
        if node.attributes.get("class") == "footnote" and _is_notes(kid):
            found.update({f"#{item.attributes['id']}": item for item in kid.elements()})
        else:
            found.update(_notes(kid))
    return found


def _is_notes(kid: Node | str) -> bool:
    """Whether this is the list of notes, or the rule above it."""
    if isinstance(kid, str) or kid.name not in ("hr", "ol"):
        return False
    return all(item.attributes.get("id", "").startswith("fn:") for item in kid.elements())


class _Walk:
    """One walk over one leaf; keeps the count of the footnotes called so far."""

    def __init__(self, notes: dict[str, Node]) -> None:
        self.notes = notes
        self.numbers: dict[str, int] = {}

    def uncalled(self) -> list[Block]:
        """The words of notes that nothing calls: they end the leaf, so that none is lost."""
        return [block for to in self.notes if to not in self.numbers for block in self.note(to)]

    def flow(self, kids: Iterable[Node | str]) -> list[Block]:
        """Kids that may mix blocks and loose inlines; loose ones are gathered into paragraphs."""
        made: list[Block] = []
        loose: list[Node | str] = []
        for kid in kids:
            if isinstance(kid, Node) and (kid.name in _BLOCKS or kid.name in _PLAIN_BOX):
                made += self.paragraph(loose)
                loose = []
                made += self.block(kid)
            else:
                loose.append(kid)
        return made + self.paragraph(loose)

    def paragraph(self, kids: list[Node | str]) -> list[Block]:
        """One paragraph, or none where there is nothing but space."""
        line = _trimmed(self.inlines(kids))
        if len(line) == 1 and line[0]["t"] in ("img", "note"):
            return line
        return [{"t": "p", "c": line}] if line else []

    def block(self, node: Node) -> list[Block]:
        """One block element; a box that means nothing by itself gives what it holds."""
        name = node.name
        if name == "p":
            return self.paragraph(node.kids)
        if name[0] == "h" and name[1:].isdigit():
            return [{"t": "h", "level": int(name[1]), "c": _trimmed(self.inlines(node.kids))}]
        if name in ("ul", "ol"):
            return self.listing(node)
        if name == "blockquote":
            return [{"t": "quote", "c": self.flow(node.kids)}]
        if name == "table":
            return self.table(node)
        if name == "pre":
            return [{"t": "pre", "text": node.words().removesuffix("\n")}]
        if name == "hr":
            return [{"t": "hr"}]
        if node.attributes.get("class") == "footnote":
            return self.flow(kid for kid in node.kids if not _is_notes(kid))
        return self.flow(node.kids)

    def listing(self, node: Node) -> list[Block]:
        """A bulleted or numbered list; what stands outside any item becomes an item."""
        items = [kid if kid.name == "li" else Node("li", {}, [kid]) for kid in node.elements()]
        if not items:
            return self.flow(node.kids)
        made: Block = {"t": node.name, "tight": not any(_loose(item) for item in items)}
        if node.name == "ol":
            start = node.attributes.get("start", "1")
            made["start"] = int(start) if start.isdecimal() and len(start) < 10 else 1
        return [made | {"items": [self.flow(item.kids) for item in items]}]

    def table(self, node: Node) -> list[Block]:
        """A table, each row filled up to the widest."""
        rows = [list(row.elements()) for row in _rows(node)]
        width = max((len(row) for row in rows), default=0)
        if not width:
            return self.flow([kid for kid in node.kids if kid != "\n"])
        cells = [[_trimmed(self.inlines(cell.kids)) for cell in row] for row in rows]
        filled = [row + [[] for _ in range(width - len(row))] for row in cells]
        headed = all(cell.name == "th" for cell in rows[0])
        align = [cell.attributes.get("align", "") for cell in rows[0]]
        return [
            {
                "t": "table",
                "align": align + [""] * (width - len(align)),
                "head": filled[0] if headed else [],
                "rows": filled[1:] if headed else filled,
            }
        ]

    def inlines(self, kids: Iterable[Node | str]) -> list[Inline]:
        """The inlines of a run; neighbouring texts are joined."""
        made: list[Inline] = []
        for kid in kids:
            for piece in self.text(kid) if isinstance(kid, str) else self.inline(kid):
                if piece["t"] == "text" and made and made[-1]["t"] == "text":
                    piece = {"t": "text", "s": _SPACES.sub(" ", made.pop()["s"] + piece["s"])}
                made.append(piece)
        return made

    def text(self, words: str) -> list[Inline]:
        """Words with every run of white space as one space."""
        return [{"t": "text", "s": _SPACES.sub(" ", words)}]

    def inline(self, node: Node) -> list[Inline]:
        """One inline element; a block met inside a line gives its inlines with a space between."""
        name = node.name
        if name == "a":
            return self.anchor(node)
        if name == "code":
            return [{"t": "code", "s": node.words()}]
        if name == "br":
            return [{"t": "br"}]
        if name == "img":
            file = leads_to(node.attributes.get("src", ""), Scheme.FILE)
            return [{"t": "img", "file": file, "alt": node.attributes.get("alt", "")}]
        inside = self.inlines(node.kids)
        if name == "sup" and [piece["t"] for piece in inside] == ["foot"]:
            return inside
        if name in _WRAPS:
            return [{"t": _WRAPS[name], "c": inside}] if inside else []
        return [{"t": "text", "s": " "}, *inside, {"t": "text", "s": " "}]

    def anchor(self, node: Node) -> list[Inline]:
        """A link, a tick box, the call of a footnote; the way back from one is left out."""
        to = node.attributes.get("href", "")
        if to.startswith(Scheme.TICK.prefix):
            return [{"t": "tick", "done": node.words() == DONE}]
        if to.startswith("#fnref"):
            return []
        if to in self.notes:
            return [self.foot(to)]
        inside = self.inlines(node.kids)
        if not to or to.startswith("#"):
            return inside
        said = node.attributes.get("class") == "said"
        return [{"t": "link", "to": to, "said": said, "c": inside}]

    def foot(self, to: str) -> Inline:
        """The call of a footnote, with the note itself the first time."""
        if to in self.numbers:
            return {"t": "foot", "n": self.numbers[to], "again": True, "c": []}
        number = self.numbers[to] = len(self.numbers) + 1
        return {"t": "foot", "n": number, "again": False, "c": self.note(to)}

    def note(self, to: str) -> list[Block]:
        """The blocks of one footnote."""
        return self.flow(self.notes[to].kids)


def _rows(node: Node) -> list[Node]:
    """The rows of a table, wherever they lie in its head and body."""
    found: list[Node] = []
    for kid in node.elements():
        found += [kid] if kid.name == "tr" else _rows(kid) if kid.name in _PLAIN_BOX else []
    return found


def _loose(item: Node) -> bool:
    """Whether an item was written with empty lines, which makes paragraphs of its words."""
    return any(kid.name == "p" for kid in item.elements())


def _trimmed(line: list[Inline]) -> list[Inline]:
    """A line without the white space at its two ends."""
    if line and line[0]["t"] == "text":
        first = line[0]["s"].lstrip(" ")
        line = [{"t": "text", "s": first}, *line[1:]] if first else line[1:]
    if line and line[-1]["t"] == "text":
        last = line[-1]["s"].rstrip(" \N{NO-BREAK SPACE}")
        line = [*line[:-1], {"t": "text", "s": last}] if last else line[:-1]
    return line
