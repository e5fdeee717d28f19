import io

import pytest
import typst
from PIL import Image
from pypdf import PdfReader, PdfWriter

from binder.paper.data import Part, Picture, PrintLeaf, Section
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from tests.paper.reading_back import bare, texts


def drawn(kind="PNG", size=(300, 200)):
    made = io.BytesIO()
    Image.new("RGB", size, "#7788aa").save(made, kind)
    return made.getvalue()


def handout(*pages, user=None, owner=None):
    """A PDF with these words, one page each, locked if passwords are given."""
    made = typst.compile("#pagebreak()\n".join(f"{words}\n" for words in pages).encode())
    if user is None and owner is None:
        return made
    writer = PdfWriter(clone_from=PdfReader(io.BytesIO(made)))
    writer.encrypt(user or "", owner, algorithm="RC4-128")
    locked = io.BytesIO()
    writer.write(locked)
    return locked.getvalue()


def shown(picture, **more):
    """The pages of a tab whose only leaf shows one picture."""
    part = Part("", [{"t": "img", "file": "f", "alt": "the kiln"}])
    leaf = PrintLeaf("a", "plain", "Leaf", parts=(part,))
    return typeset(Section("B", "T", leaves=(leaf,), pictures={"f": picture}), Sheet(), **more)


def images(pdf):
    return sum(len(page.images) for page in PdfReader(io.BytesIO(pdf)).pages)


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "GIF", "WEBP"])
def test_pictures_are_printed(kind):
    assert images(shown(Picture(drawn(kind), f"image/{kind.lower()}"))) == 1


def test_a_picture_that_says_it_is_another_kind_is_printed_all_the_same():
    assert images(shown(Picture(drawn("JPEG"), "image/png"))) == 1


@pytest.mark.parametrize(
    "picture",
    [
        Picture(b"\x89PNG\r\n\x1a\nnonsense", "image/png"),
        Picture(drawn("PNG")[:200], "image/png"),
        Picture(b"<svg", "image/svg+xml"),
        Picture(b"%PDF-1.4 junk", "application/pdf"),
        Picture(drawn("BMP"), "image/bmp"),
        Picture(b"", "image/png"),
    ],
)
def test_a_broken_picture_is_named_in_its_place_and_the_rest_is_printed(picture):
    pages = texts(shown(picture))
    assert bare("the kiln (a picture that cannot be printed)") in pages[-1]


def test_a_tall_picture_stays_on_its_page():
    assert len(texts(shown(Picture(drawn(size=(100, 9_000)), "image/png")))) == 3


def test_a_handout_is_printed_page_after_page_in_order():
    kept = {
        "one": Picture(handout("first", "second", "third"), "application/pdf"),
        "two": Picture(handout("fourth", "fifth", owner="x"), "application/pdf"),
        "locked": Picture(handout("hidden", user="secret"), "application/pdf"),
    }
    leaf = PrintLeaf("a", "handout", "Kiln sheet", handouts=("one", "two", "locked"))
    pages = texts(typeset(Section("B", "T", leaves=(leaf,), pictures=kept), Sheet()))
    order = ["first", "second", "third", "fourth", "fifth", "cannotbeprinted"]
    assert all(word in page for word, page in zip(order, pages[2:], strict=True))


def test_a_broken_page_does_not_lose_the_other_pictures():
    part = Part("", [{"t": "img", "file": name, "alt": name} for name in ("good", "bad")])
    leaf = PrintLeaf("a", "plain", "Leaf", parts=(part,))
    kept = {"good": Picture(drawn(), "image/png"), "bad": Picture(b"GIF89a", "image/gif")}
    pdf = typeset(Section("B", "T", leaves=(leaf,), pictures=kept), Sheet())
    assert images(pdf) == 1
    assert bare("bad (a picture that cannot be printed)") in texts(pdf)[-1]
