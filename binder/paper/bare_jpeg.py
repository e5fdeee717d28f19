"""Takes out of a JPEG what a camera or a program wrote beside the picture: place, time, comments.

The typesetter puts the file into the PDF as it is, so this would travel along. The picture itself
is not touched, and stays turned as it was. Segments are those of ITU-T T.81 (1992), annex B; what
is within an Exif segment, TIFF 6.0, section 2.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

_BEGIN, _END, _SCAN, _EXIF, _PROFILE = 0xD8, 0xD9, 0xDA, 0xE1, 0xE2
_ALONE = frozenset({0x01, *range(0xD0, 0xD8)})
"""Markers without a length."""
_BESIDE = frozenset({*range(0xE1, 0xEE), 0xEF, 0xFE})
"""Application data and comments; 0xE0 (JFIF) and 0xEE (Adobe) say how colours are to be read."""
_NEXT = re.compile(rb"\xff[^\x00\xd0-\xd7\xff]", re.DOTALL)
"""The first marker after the coded part of a scan."""
_TURNED = 0x0112


def bare_jpeg(data: bytes) -> bytes:
    """The picture alone; anything that is no whole JPEG is returned as it came."""
    if not data.startswith(b"\xff\xd8"):
        return data
    try:
        return b"".join(_kept(data))
    except (IndexError, ValueError):
        return data


def _kept(data: bytes) -> Iterator[bytes]:
    yield data[:2]
    for marker, segment in _segments(data):
        if marker == _EXIF and segment[4:10] == b"Exif\0\0":
            yield _turned(_orientation(segment[10:]))
        elif marker not in _BESIDE or _is_profile(marker, segment):
            yield segment


def _segments(data: bytes) -> Iterator[tuple[int, bytes]]:
    """Each marker with its segment, a scan with its coded part, to the end of the picture."""
    at = 2
    while True:
        if data[at] != 0xFF:
            raise ValueError("no marker")
        marker = data[at + 1]
        if marker == 0xFF:
            at += 1
            continue
        end = at + 2
        if marker not in _ALONE and marker != _END:
            end += int.from_bytes(data[end : end + 2])
        if marker == _SCAN:
            following = _NEXT.search(data, end)
            end = following.start() if following else len(data)
        if end > len(data):
            raise ValueError("broken off")
        yield marker, data[at:end]
        if marker == _END or end == len(data):
            return
        at = end


def _is_profile(marker: int, segment: bytes) -> bool:
    return marker == _PROFILE and segment[4:16] == b"ICC_PROFILE\0"


def _orientation(tiff: bytes) -> int:
    """How the picture is to be turned, 1 (as it is) to 8."""

    def number(at: int, size: int) -> int:
        return int.from_bytes(tiff[at : at + size], "little" if tiff[:2] == b"II" else "big")

    first = number(4, 4)
    for entry in range(number(first, 2)):
        at = first + 2 + 12 * entry
        if number(at, 2) == _TURNED:
            return number(at + 8, 2)
    return 1


def _turned(way: int) -> bytes:
    """An Exif segment that says nothing else; none for a picture that is not turned."""
    if not 2 <= way <= 8:
        return b""
    entry = b"\x01\x12\0\x03\0\0\0\x01" + way.to_bytes(2) + b"\0\0"
    exif = b"Exif\0\0MM\0*\0\0\0\x08\0\x01" + entry + b"\0\0\0\0"
    return b"\xff\xe1" + (len(exif) + 2).to_bytes(2) + exif
