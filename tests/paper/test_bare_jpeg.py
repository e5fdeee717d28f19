"""What a camera wrote beside a picture does not travel along in a printed file."""

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageOps

from binder.paper.bare_jpeg import bare_jpeg
from binder.paper.data import Picture
from tests.paper.test_leaving_out import everything
from tests.paper.test_pictures import shown

PLACE = "SECRET PLACE"


def photograph(way=1, progressive=False):
    """A picture of two colours with place, comment and profile beside it."""
    picture = Image.new("RGB", (60, 40), (200, 30, 30))
    picture.paste((30, 60, 200), (0, 20, 60, 40))
    tags = Image.Exif()
    tags[0x0112], tags[0x010E] = way, PLACE
    tags.get_ifd(0x8825)[1] = "N"
    made = io.BytesIO()
    picture.save(
        made, "JPEG", exif=tags, comment=PLACE.encode(), icc_profile=b"profile" * 9,
        progressive=progressive, xmp=f"<x>{PLACE}</x>".encode(),
    )  # fmt: skip
    return made.getvalue() + b"\xff\xd8" + PLACE.encode()


def opened(data):
    return Image.open(io.BytesIO(data))


@pytest.mark.parametrize("progressive", [False, True])
@pytest.mark.parametrize("way", range(1, 9))
def test_the_picture_is_the_same_and_turned_as_it_was(way, progressive):
    data = photograph(way, progressive)
    bare = bare_jpeg(data)
    assert PLACE.encode() in data
    assert PLACE.encode() not in bare
    assert len(bare) < len(data)
    one, other = (ImageOps.exif_transpose(opened(each)) for each in (data, bare))
    assert one.size == other.size
    assert one.tobytes() == other.tobytes()
    assert set(opened(bare).getexif()) <= {0x0112}
    assert opened(bare).info["icc_profile"] == b"profile" * 9


def test_it_is_not_in_the_printed_file():
    pdf = shown(Picture(photograph(6), "image/jpeg"))
    assert "SECRET" not in everything(pdf)
    assert "SECRET" in photograph(6).decode("latin-1")


def test_what_is_clean_already_stays_as_it_is():
    made = io.BytesIO()
    Image.new("RGB", (9, 9)).save(made, "JPEG")
    assert bare_jpeg(made.getvalue()) == made.getvalue()


@given(st.binary(max_size=200), st.integers(0, 400))
def test_what_is_broken_does_no_harm(junk, end):
    for data in (junk, photograph()[:end] + junk):
        assert len(bare_jpeg(data)) <= len(data)
