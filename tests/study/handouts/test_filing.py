"""Filing files behind the window: what is kept, what gets a leaf, what is said of the rest."""

import io

import pytest
from pypdf import PdfWriter

from binder.errors import CanMend
from binder.store.file import check, open_file
from binder.study.handouts import filed_words, filing, on_paper, page_notes
from binder.study.leaves import files, leaves, tabs
from binder.study.overview import moving
from tests.page.markup.written import written


def never(*_pages):
    return False


def quiet(*_how_far):
    return None


def keep(binder, *paths, stop=never, told=quiet):
    return filing.keep_all(binder, paths, told, stop)


def notes_tab(binder):
    return next(tab for tab in tabs.tabs(binder) if tab.name == "Notes")


def filed(binder, *paths):
    report = keep(binder, *paths)
    uids = filing.add_leaves(binder, notes_tab(binder), report.filed, "2026-11-25")
    filed_words.read_in(
        binder, [(uid, [file.uid]) for uid, file in zip(uids, report.filed, strict=True)],
        quiet, never,
    )  # fmt: skip
    return uids


@pytest.fixture
def folder(tmp_path):
    made = tmp_path / "handouts"
    made.mkdir()
    for number in (10, 9, 1):
        (made / f"sheet {number}.pdf").write_bytes(written(f"Sheet {number}"))
    return made


def test_files_come_in_the_order_of_their_names(folder):
    (folder / "b").mkdir()
    (folder / "b" / "x.pdf").write_bytes(b"")
    names = [str(path.relative_to(folder)) for path in filing.files_in([folder])]
    assert names == ["b/x.pdf", "sheet 1.pdf", "sheet 9.pdf", "sheet 10.pdf"]


def test_a_folder_that_leads_into_itself_ends(folder):
    (folder / "again").symlink_to(folder, target_is_directory=True)
    assert len(filing.files_in([folder])) == 3


@pytest.mark.parametrize(
    ("data", "media"),
    [
        (b"%PDF-1.7", "application/pdf"),
        (b"\n\n junk %PDF-1.4", "application/pdf"),
        (b"\x89PNG\r\n\x1a\n", "image/png"),
        (b"\xff\xd8\xff\xe0", "image/jpeg"),
        (b"GIF89a", "image/gif"),
        (b"RIFF\0\0\0\0WEBPVP8 ", "image/webp"),
        (b"<?xml version='1.0'?><svg xmlns=''>", "image/svg+xml"),
        (b"only words", ""),
        (b"", ""),
        (b"x" * 5000 + b"%PDF-", ""),
    ],
)
def test_kinds_are_told_by_what_a_file_holds(data, media):
    assert files.media_of(data) == media


def test_equal_files_are_kept_once_under_any_name(binder, folder):
    (folder / "a copy.pdf").write_bytes((folder / "sheet 9.pdf").read_bytes())
    report = keep(binder, folder)
    assert [file.name for file in report.filed] == ["a copy.pdf", "sheet 1.pdf", "sheet 10.pdf"]
    assert report.there == 1
    filing.add_leaves(binder, notes_tab(binder), report.filed, "2026-11-25")
    again = keep(binder, folder)
    assert (len(again.filed), again.there) == (0, 4)


def test_a_kept_file_without_a_leaf_gets_one_and_is_not_kept_again(binder, folder):
    filed(binder, folder)
    binder.gate.undo()
    assert not leaves.contents(binder, notes_tab(binder))
    report = keep(binder, folder)
    assert (len(report.filed), report.there) == (3, 0)
    assert binder.sql("SELECT count(*) FROM kept") == [(3,)]


def test_what_lies_in_the_drawer_is_filed_again(binder, folder):
    uids = filed(binder, folder)
    leaves.set_aside(binder, uids[0])
    assert len(keep(binder, folder).filed) == 1


def test_all_leaves_are_one_step(binder, folder):
    filed(binder, folder)
    assert binder.gate.undo() == "File 3 handouts"
    assert not leaves.contents(binder, notes_tab(binder))
    assert binder.gate.redo() == "File 3 handouts"
    titles = [entry.title for entry in leaves.contents(binder, notes_tab(binder))]
    assert titles == ["sheet 1", "sheet 9", "sheet 10"]
    assert check(binder.path) == []


def test_a_file_that_vanishes_meanwhile_is_named(binder, folder):
    def vanish(done, _of):
        if done == 1:
            (folder / "sheet 9.pdf").unlink()

    report = keep(binder, folder, told=vanish)
    assert [file.title for file in report.filed] == ["sheet 1", "sheet 10"]
    ((name, sentence),) = report.amiss
    assert name == "sheet 9.pdf"
    assert sentence == "“sheet 9.pdf” could not be read (No such file or directory)."


def test_stopping_keeps_what_was_read(binder, folder):
    seen = []
    report = keep(binder, folder, told=lambda done, _of: seen.append(done),
                  stop=lambda: len(seen) == 2)  # fmt: skip
    assert report.stopped
    assert [file.title for file in report.filed] == ["sheet 1", "sheet 9"]
    assert files.kept(binder, report.filed[1].uid).data.startswith(b"%PDF")


def test_a_name_that_is_no_text_can_be_filed(binder, tmp_path):
    odd = tmp_path / "tide\udcfftable\n[x].pdf"
    try:
        odd.write_bytes(written("Tides"))
    except OSError:
        odd = tmp_path / "tide\ttable [x].pdf"
        odd.write_bytes(written("Tides"))
    (uid,) = filed(binder, odd)
    view = leaves.leaf(binder, uid)
    assert view.title.endswith("[x]")
    assert len(files.linked(view.text)) == 1


def test_titles_come_from_the_name_or_where_it_says_nothing_from_the_pdf(tmp_path):
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.add_metadata({"/Title": "The tides\nof Ostrey"})
    out = io.BytesIO()
    writer.write(out)
    for name, title in (
        ("2026_ferry times.pdf", "2026 ferry times"),
        ("001.pdf", "The tides of Ostrey"),
    ):
        (tmp_path / name).write_bytes(out.getvalue())
        assert filing.ready(tmp_path / name).title == title


def test_a_binder_that_can_only_be_read_takes_nothing(binder, folder):
    binder.writable = False
    with pytest.raises(CanMend, match="can be read but not written"):
        keep(binder, folder)


# Words


def test_words_of_filed_pdfs_are_found_and_go_with_their_leaf(binder, folder, shelf):
    from binder.store.search import find, match

    uids = filed(binder, folder)
    assert next(hit.uid for hit in find(binder, match("sheet 9"))) == uids[1]
    (words,) = filed_words.words_of(binder, uids[1]).values()
    assert words.pages == ("Sheet 9",)
    target = shelf.add("Mastery", "spineM")
    tab = tabs.tab(target, tabs.add_tab(target, "Clippings", "clippings"))
    moving.move_to_binder(binder, uids[1], target, tab)
    assert find(target, match("sheet 9"))
    (file,) = filed_words.words_of(target, uids[1])
    assert files.kept(target, file) is not None


def test_words_read_twice_stand_once_and_go_with_the_file(binder, folder):
    (uid, *_) = filed(binder, folder)
    (file,) = filed_words.words_of(binder, uid)
    filed_words.read_in(binder, [(uid, [file])], quiet, never)
    assert binder.sql("SELECT count(*) FROM filed_text WHERE file = ?", (file,)) == [(1,)]
    filed_words.read_in(binder, [(uid, [])], quiet, never)
    assert filed_words.words_of(binder, uid) == {}


def test_words_come_back_after_undo_and_redo(binder, folder):
    (uid, *_) = filed(binder, folder)
    binder.gate.undo()
    binder.gate.redo()
    assert filed_words.words_of(binder, uid) == {}
    ((file, _),) = files.linked(leaves.leaf(binder, uid).text)
    filed_words.read_in(binder, [(uid, [file])], quiet, never)
    assert filed_words.words_of(binder, uid)[file].pages == ("Sheet 1",)


def test_no_more_words_are_kept_than_can_be_put_into_the_index_at_once(
    binder, tmp_path, monkeypatch
):
    monkeypatch.setattr(filed_words, "MOST", 12)
    monkeypatch.setattr(filed_words, "AT_A_TIME", 1)
    (tmp_path / "long.pdf").write_bytes(written("First page", "Second page", "Third page"))
    (uid,) = filed(binder, tmp_path / "long.pdf")
    ((file, words),) = filed_words.words_of(binder, uid).items()
    assert words.pages == ("First page", "Second page")
    data = files.kept(binder, file).data
    assert filed_words.words_in(file, "long.pdf", data, never).pages[2] == "Third page"


def test_reading_a_long_file_tells_how_far_it_is_and_can_be_stopped(binder, tmp_path, monkeypatch):
    monkeypatch.setattr(filed_words, "AT_A_TIME", 2)
    (tmp_path / "long.pdf").write_bytes(written(*map(str, range(9))))
    (file,) = keep(binder, tmp_path / "long.pdf").filed
    (uid,) = filing.add_leaves(binder, notes_tab(binder), [file], "")
    told = []
    filed_words.read_in(
        binder, [(uid, [file.uid])], lambda *far: told.append(far), lambda: len(told) > 3
    )
    assert told == [(0, 1, 0), (0, 1, 0), (0, 1, 2), (0, 1, 4)]
    assert filed_words.words_of(binder, uid) == {}


def test_locked_files_and_scans_have_no_words(binder, tmp_path):
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.encrypt("x")
    out = io.BytesIO()
    writer.write(out)
    (tmp_path / "shut.pdf").write_bytes(out.getvalue())
    report = keep(binder, tmp_path / "shut.pdf")
    assert report.remarks == [
        "“shut.pdf” is filed, but locked with a password; file a copy without one."
    ]
    (uid,) = filing.add_leaves(binder, notes_tab(binder), report.filed, "")
    filed_words.read_in(binder, [(uid, [report.filed[0].uid])], quiet, never)
    assert filed_words.words_of(binder, uid)[report.filed[0].uid].none
    (tmp_path / "open.pdf").write_bytes(written("One page"))
    report = keep(binder, tmp_path / "open.pdf")
    assert (len(report.filed), report.remarks, report.amiss) == (1, [], [])


# Notes beside pages and ticks


def test_notes_beside_pages_are_written_changed_and_taken_away(binder, folder):
    uid, other, _ = filed(binder, folder)
    (file,) = filed_words.words_of(binder, uid)
    page_notes.write_beside(binder, uid, file, 2, "First.\n")
    page_notes.write_beside(binder, uid, file, 1, "Before it.")
    page_notes.write_beside(binder, uid, file, 2, "Second.")
    assert [(note.page, note.text) for note in page_notes.page_notes(binder, uid)] == [
        (1, "Before it."), (2, "Second."),
    ]  # fmt: skip
    assert page_notes.page_notes(binder, other) == []
    page_notes.write_beside(binder, uid, file, 1, "  ")
    assert len(page_notes.page_notes(binder, uid)) == 1
    binder.gate.undo()
    assert len(page_notes.page_notes(binder, uid)) == 2
    with pytest.raises(CanMend, match="removed elsewhere"):
        page_notes.write_beside(binder, "gone", file, 1, "Lost?")


def test_notes_beside_pages_are_found(binder, folder):
    from binder.store.search import find, match

    uid, *_ = filed(binder, folder)
    (file,) = filed_words.words_of(binder, uid)
    page_notes.write_beside(binder, uid, file, 1, "A heron on the slip.")
    assert [hit.uid for hit in find(binder, match("heron"))] == [uid]


def test_ticks_of_printing(binder, folder):
    uids = filed(binder, folder)
    on_paper.tick_off(binder, uids[:1], "2026-10-12T18:00:00")
    on_paper.tick_off(binder, uids)
    assert on_paper.ticked(binder, uids[0]) == "2026-10-12T18:00:00"
    assert on_paper.handouts(binder, notes_tab(binder)) == dict.fromkeys(uids, True)
    on_paper.untick(binder, uids[1:])
    assert on_paper.handouts(binder, notes_tab(binder)) == {
        uids[0]: True, uids[1]: False, uids[2]: False,
    }  # fmt: skip
    other = open_file(binder.path)
    assert on_paper.ticked(other, uids[0])
    other.close()
