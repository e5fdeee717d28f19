"""A picture of the table with the cards of a reading on it, drawn by our own code."""

from __future__ import annotations

from typing import Any

from binder.carry.handouts import day_colours, fonts
from binder.errors import OwnFault
from binder.page.layout.layout import LaidCard, layout_svg
from binder.study.readings.readings import ReadingView

_SIZE = (420.0, 300.0)
_PAGE = b"""#let said = sys.inputs
#set page(width: auto, height: auto, margin: 18mm, fill: rgb(said.cloth))
#set text(font: "Vollkorn")
#image(bytes(said.svg), format: "svg")
"""
_CLOTH = "cover"
"""The colour of the palette that the table is covered with."""


def table_png(reading: ReadingView) -> bytes:
    """The cards as they lay in their places, without numbers, on a cloth."""
    import typst

    paths: Any = fonts()
    colours, titles = day_colours(), reading.titles
    laid = {
        one.n: LaidCard(
            titles.laid(one.card, one.title), one.reversed, one.title, titles.roman(one.card)
        )
        for one in reversed(reading.laid)
    }
    svg = layout_svg(reading.spread.places, laid, colours, size=_SIZE, labels="none")
    try:
        made: bytes = typst.compile(
            _PAGE, font_paths=paths, ignore_system_fonts=True, format="png", ppi=120,
            sys_inputs={"svg": svg, "cloth": colours[_CLOTH]},
        )  # fmt: skip
    except typst.TypstError as error:
        raise OwnFault(f"The picture of the table could not be drawn ({error}).") from error
    return made
