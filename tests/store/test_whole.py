"""Files written whole or not at all."""

import pytest

from binder.errors import CanMend
from binder.store.whole import write_whole


def test_a_file_is_written_over_an_older_one_and_nothing_else_is_left(tmp_path):
    out = tmp_path / "sheet.pdf"
    write_whole(b"old", out)
    write_whole(b"new", out)
    assert out.read_bytes() == b"new"
    assert list(tmp_path.iterdir()) == [out]


def test_no_folder_is_one_sentence(tmp_path):
    out = tmp_path / "gone" / "sheet.pdf"
    with pytest.raises(CanMend) as said:
        write_whole(b"new", out)
    assert str(said.value) == f"“{out}” could not be written (No such file or directory)."


def test_what_cannot_take_its_name_leaves_nothing_behind(tmp_path):
    """A folder that is not empty stands where the file should."""
    out = tmp_path / "sheet.pdf"
    (out / "within").mkdir(parents=True)
    with pytest.raises(CanMend, match=r"could not be written"):
        write_whole(b"new", out)
    assert list(tmp_path.iterdir()) == [out]
    assert out.is_dir()
