"""Files kept in a binder, as a leaf's Markdown names them."""

import pytest

from binder.errors import CanMend
from binder.study.leaves import files


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (
            "![The map](file:abc) and [the sheet](file:d-1).",
            [("abc", "The map"), ("d-1", "the sheet")],
        ),
        ("![one](file:abc)\n\n[two](file:abc)", [("abc", "one")]),
        ('![a [b] c](file:abc "said")', [("abc", "a [b] c")]),
        ("[no](https://example.org) file:abc (file:abc)", []),
        ("", []),
    ],
)
def test_files_a_leaf_names(text, found):
    assert files.linked(text) == found


@pytest.mark.parametrize(
    ("name", "picture", "text"),
    [
        ("The map.png", True, "![The map](file:abc)"),
        ("talk.pdf", False, "[talk](file:abc)"),
        ("a [draft] b.pdf", False, "[a (draft) b](file:abc)"),
    ],
)
def test_the_words_that_show_a_file(name, picture, text):
    """Brackets in a name would end the link's own."""
    assert files.markdown_for("abc", name, picture=picture) == text
    assert files.linked(text) == [("abc", text.partition("[")[2].partition("]")[0])]


def test_a_leaf_without_its_files():
    text = "Before.\n\n![The map](file:abc)\n\nAfter, see [p. 3](source:lisle#p3).\n"
    assert files.without_links(text) == "Before.\n\nAfter, see [p. 3](source:lisle#p3)."


PDF = b"%PDF-1.7\nand the rest"


def test_a_file_is_kept_once_and_found_in_any_binder(course_shelf, tmp_path):
    practice, mastery = course_shelf.binder("Practice"), course_shelf.binder("Mastery")
    path = tmp_path / "talk.pdf"
    path.write_bytes(PDF)
    uid = files.keep_file(practice, path)
    assert files.keep_bytes(practice, "again.pdf", files.PDF, PDF) == uid
    view = files.kept(practice, uid)
    assert (view.name, view.media, view.data) == ("talk.pdf", files.PDF, PDF)
    assert not view.is_picture
    assert files.kept(mastery, uid) is None
    assert files.kept_anywhere(course_shelf, uid) == view
    assert files.kept_anywhere(course_shelf, uid, mastery) == view
    assert files.kept_anywhere(course_shelf, "no-such") is None
    other = files.keep_bytes(mastery, "other.pdf", files.PDF, PDF, uid=uid)
    assert other == uid
    assert files.kept_anywhere(course_shelf, uid, mastery).name == "other.pdf"


@pytest.mark.parametrize(
    ("name", "data", "sentence"),
    [
        ("a.txt", b"words", "“a.txt” is neither a picture nor a PDF, so it was not filed."),
        ("a.pdf", b"", "“a.pdf” is empty, so there is nothing to keep."),
        ("a.pdf", None, "“a.pdf” could not be read (No such file or directory)."),
    ],
)
def test_what_cannot_be_kept_is_one_sentence(binder, tmp_path, name, data, sentence):
    if data is not None:
        (tmp_path / name).write_bytes(data)
    with pytest.raises(CanMend) as said:
        files.keep_file(binder, tmp_path / name)
    assert str(said.value) == sentence
