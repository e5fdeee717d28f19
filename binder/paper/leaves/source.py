"""The leaf of a source as it is printed: what it is, notes, and where it is cited."""

from __future__ import annotations

from collections.abc import Iterator

from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.data import Part, PrintLeaf
from binder.paper.leaves.gathering import Gathering
from binder.store.shelf import Shelf
from binder.study.leaves.leaves import LeafView
from binder.study.readings.discretion import Discretion
from binder.study.sources import bibliography, citing
from binder.study.sources.sources import SourceView, source_of


def printed(of: Gathering, view: LeafView) -> PrintLeaf:
    """The source with its facts; a leaf whose bibliography is not written yet has its notes."""
    shelf, discretion = of.shelf, of.discretion
    body = of.blocks(view, view.text) if view.text.strip() else []
    source = source_of(view.binder, view.uid)
    full = discretion.title(str(source.fields.get("title", ""))) if source else ""
    told = _parts(shelf, source, discretion) if source else ()
    notes = (Part("Notes" if source else "", body),) if body else ()
    return PrintLeaf(
        uid=view.uid,
        kind="source",
        title=view.title,
        over=discretion.line(source.author) if source and source.fields.get("author") else "",
        under=full if full != view.title else "",
        facts=tuple(bibliography.facts(source)) if source else (),
        parts=(*notes, *told),
    )


def _parts(shelf: Shelf, source: SourceView, discretion: Discretion) -> Iterator[Part]:
    told = [(label, discretion.line(said)) for label, said in bibliography.described(source)]
    lines = [f"{label}: {said}" for label, said in told if said]
    missing = bibliography.lacking(source.fields)
    lines += [f"It has {missing}; it is cited by what it has."] if missing else []
    yield from _listed("Details", lines, discretion)
    cited = [f"{one.title}: {citing.places(one)}" for one in citing.cited(shelf, source.key)]
    yield from _listed("Where it is cited", cited, discretion)


def _listed(heading: str, lines: list[str], discretion: Discretion) -> Iterator[Part]:
    """A part with a line for each of these words, which are words and no markup."""
    said = [discretion.line(line) for line in lines]
    made = [{"t": "p", "c": [{"t": "text", "s": line}]} for line in said if line]
    if made:
        items = [[block] for block in made]
        shape = blocks(to_html("- a"))[0]
        yield Part(heading, [{**shape, "items": items}])
