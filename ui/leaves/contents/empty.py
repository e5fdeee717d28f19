"""What a tab says of itself while nothing stands behind it: what belongs there, how it gets in."""

from __future__ import annotations

from binder.page.address import Scheme
from binder.study.kinds import TabKind

_LEAF = f'<a href="{Scheme.BEGIN.to("leaf")}">Begin a leaf</a> (Ctrl+N)'
_OR_LEAF = f'<a href="{Scheme.BEGIN.to("leaf")}">begin a leaf</a> (Ctrl+N)'
_READING = f'<a href="{Scheme.BEGIN.to("reading")}">Log a reading</a> (Ctrl+L)'
_HANDOUTS = f'<a href="{Scheme.BEGIN.to("handouts")}">file PDFs and pictures</a> (Ctrl+Shift+I)'
_TAKE = f'<a href="{Scheme.BEGIN.to("sources")}">take them in from a list you have</a>'
_PLAN = f'<a href="{Scheme.BEGIN.to("plan")}">Lay out its units</a>'
_DRAWER = f'<a href="{Scheme.BEGIN.to("drawer")}">the drawer</a>'

_SAYS = {
    "plan": f"The plan of this level: its units, and how you study. {_PLAN}, or {_OR_LEAF}.",
    "majors": "A leaf for each card of the Major Arcana belongs here. If they were set aside, they "
    f"lie in {_DRAWER}. Leaves beside theirs may stand here too: {_OR_LEAF}.",
    "minors": "A leaf for each card of the Minor Arcana belongs here. If they were set aside, they "
    f"lie in {_DRAWER}. Leaves beside theirs may stand here too: {_OR_LEAF}.",
    "readings": f"Your readings belong here, the newest first. {_READING}; it opens the form from "
    "anywhere.",
    "methods": "How you work with the cards belongs here: a leaf for each method, spread or "
    f"exercise. {_LEAF}, or drag one here from another tab.",
    "sources": "The books, articles and people you learn from belong here, a leaf for each. "
    f"{_LEAF}, or {_TAKE}.",
    "clippings": f"Handouts, references and clippings belong here. Drop files on it, {_HANDOUTS}, "
    f"paste one you copied (Ctrl+V), or {_OR_LEAF}.",
    "plain": "Leaves of any sort may stand here. "
    f"{_LEAF}, {_HANDOUTS}, or drag a leaf here from another tab.",
}


def words(kind: TabKind) -> str:
    """HTML with links, for a tab of that kind."""
    return f"<p>{_SAYS.get(kind.key, _SAYS['plain'])}</p>"
