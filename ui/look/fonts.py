"""The program's letters: Vollkorn in the weights it uses, handed to Qt before anything is drawn.

The package carries variable fonts. Qt takes only their Regular and Italic and thickens the rest
by smearing, so HarfBuzz pins each weight to a font of its own under one family name. That takes
some milliseconds a weight, so it is done anew at every start and nothing is kept.
"""

from __future__ import annotations

import struct
from functools import cache
from pathlib import Path

import fontpkg_vollkorn
import uharfbuzz as hb
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QFontDatabase

FAMILY = "Vollkorn"
"""Family name of every weight, for QFont and for SVG."""

UPRIGHT, ITALIC = "Vollkorn[wght].ttf", "Vollkorn-Italic[wght].ttf"
WEIGHTS = {UPRIGHT: (400, 500, 600, 700), ITALIC: (400, 600, 700)}
"""The weights pinned of each variable font."""

BOLD = 700
_AXIS = "wght"
_LINING = int.from_bytes(b"lnum")
"""The font feature that `ui.look.theme` switches on; others are on by themselves."""

_NAME_HEAD, _NAME_RECORD = struct.Struct(">HHH"), struct.Struct(">HHHHHH")
_STYLE, _ID, _FULL_NAME, _POSTSCRIPT = 2, 3, 4, 6
"""Numbers of the names by which fonts are told apart, from the OpenType specification (`name`)."""


@cache
def load() -> None:
    """Hand every weight to Qt."""
    for name, weights in WEIGHTS.items():
        variable = hb.Face(hb.Blob.from_file_path(str(_folder() / name)))
        for weight in weights:
            QFontDatabase.addApplicationFontFromData(QByteArray(pinned(variable, weight)))


def pinned(variable: hb.Face, weight: int) -> bytes:
    """The font file of one weight of a variable font.

    It has every letter and name, but of the shapes that need asking for only lining figures; that
    takes a third off the time.
    """
    wanted = hb.SubsetInput()
    for whole in (wanted.unicode_set, wanted.name_id_set):
        whole.clear()
        whole.invert()
    wanted.layout_feature_tag_set.add(_LINING)
    # Strokes of a variable font cross; a rasterizer told so leaves no seam where they do.
    wanted.flags = hb.SubsetFlags.SET_OVERLAPS_FLAG | hb.SubsetFlags.NOTDEF_OUTLINE
    wanted.pin_axis_location(variable, _AXIS, weight)
    face = wanted.subset(variable)
    tables = {tag: bytearray(face.reference_table(tag).data) for tag in face.table_tags}
    (named,) = (each for each in variable.named_instances if each.design_coords == [weight])
    _rename(tables["name"], named)
    if weight >= BOLD:
        _mark_bold(tables)
    return _file(tables)


def _folder() -> Path:
    return Path(fontpkg_vollkorn.__file__).parent / "files"


def _rename(table: bytearray, named: hb.OTVarNamedInstance) -> None:
    """Call the font by the names that the variable font has for this weight.

    They stand in the table already, so the entries of the font's own names are made to point there.
    """
    own = {
        _STYLE: named.subfamily_name_id,
        _ID: named.postscript_name_id,
        _FULL_NAME: named.postscript_name_id,
        _POSTSCRIPT: named.postscript_name_id,
    }
    _, count, _ = _NAME_HEAD.unpack_from(table)
    places = [_NAME_HEAD.size + n * _NAME_RECORD.size for n in range(count)]
    records = {place: _NAME_RECORD.unpack_from(table, place) for place in places}
    texts = {record[:4]: record[4:] for record in records.values()}
    for place, (*written, number, _, _) in records.items():
        text = texts.get((*written, own.get(number)))
        if text is not None:
            _NAME_RECORD.pack_into(table, place, *written, number, *text)


def _mark_bold(tables: dict[str, bytearray]) -> None:
    """Say that this is the family's bold, or a system may thicken it once more."""
    bold, regular = 1 << 5, 1 << 6
    (selection,) = struct.unpack_from(">H", tables["OS/2"], 62)
    struct.pack_into(">H", tables["OS/2"], 62, selection & ~regular | bold)
    (style,) = struct.unpack_from(">H", tables["head"], 44)
    struct.pack_into(">H", tables["head"], 44, style | 1)


def _file(tables: dict[str, bytearray]) -> bytes:
    """One file of the tables, with their sums."""
    kept = {tag: bytes(table) for tag, table in tables.items()}
    face = hb.Face.create_for_tables(lambda _face, tag, _data: kept.get(tag, b""), None)
    face.set_get_table_tags_func(lambda _face, _data: list(kept), None)
    return bytes(face.blob.data)
