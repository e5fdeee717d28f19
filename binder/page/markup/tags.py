"""Reading the tags of sanitised HTML, and of nothing else.

The sanitiser writes one canonical form: balanced tags, lower-case names, attributes always in
double quotes, every loose `<`, `>` and `&` as an entity. So one regular expression reads it
exactly; never give it HTML from anywhere else.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html import unescape

TOKEN = re.compile(r'<(/?)([a-z][a-z0-9]*)((?: [a-z]+="[^"]*")*)>')
"""One tag: groups are the slash of a closing tag, the name, the attributes as written."""

ATTRIBUTE = re.compile(r'([a-z]+)="([^"]*)"')
VOID = frozenset({"br", "hr", "img"})
DEEPEST = 48
"""Tags nested deeper than this are passed over; their words stay."""


@dataclass(slots=True)
class Node:
    """One element of the tree; `kids` holds Nodes and plain strings (entities resolved)."""

    name: str
    attributes: dict[str, str] = field(default_factory=dict)
    kids: list["Node | str"] = field(default_factory=list)

    def elements(self) -> Iterator["Node"]:
        """The kids that are elements, in order."""
        return (kid for kid in self.kids if isinstance(kid, Node))

    def words(self) -> str:
        """All text beneath, joined as it stands."""
        return "".join(kid if isinstance(kid, str) else kid.words() for kid in self.kids)


def attributes(written: str) -> dict[str, str]:
    """The attributes of one tag, entities resolved: ` href="a&amp;b"` -> {'href': 'a&b'}."""
    return {name: unescape(value) for name, value in ATTRIBUTE.findall(written)}


def tree(html: str) -> Node:
    """Sanitised HTML as a tree under a nameless root."""
    root = Node("")
    open_nodes, skipped, at = [root], 0, 0
    for match in TOKEN.finditer(html):
        if match.start() > at:
            open_nodes[-1].kids.append(unescape(html[at : match.start()]))
        at = match.end()
        closing, name, written = match.groups()
        if closing:
            skipped = _close(open_nodes, skipped)
        elif len(open_nodes) > DEEPEST and name not in VOID:
            skipped += 1
        else:
            node = Node(name, attributes(written) if written else {})
            open_nodes[-1].kids.append(node)
            if name not in VOID:
                open_nodes.append(node)
    if at < len(html):
        root.kids.append(unescape(html[at:]))
    return root


def _close(open_nodes: list[Node], skipped: int) -> int:
    """Close the innermost element, or one that was passed over; how many of those are left."""
    if skipped:
        return skipped - 1
    if len(open_nodes) > 1:
        open_nodes.pop()
    return 0
