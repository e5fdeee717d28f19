"""The leaf of a handout: sheets turned and enlarged, files that cannot be shown; real keys."""

import io

import pytest
from PIL import Image
from pypdf import PdfWriter
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QMenu

from binder.study import files, leaves, tabs
from ui.leaves.handout import HandoutPage


def pdf_of(*sizes, password=""):
    writer = PdfWriter()
    for width, height in sizes:
        writer.add_blank_page(width, height)
    if password:
        writer.encrypt(password)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def png(width, height, colour=(160, 40, 40)):
    out = io.BytesIO()
    Image.new("RGB", (width, height), colour).save(out, "PNG")
    return out.getvalue()


@pytest.fixture
def show(session, look, lay, qtbot):
    """Shows a handout leaf with those files: (name, media, data)."""
    practice = session.shelf.binder("Practice")

    def shown(*kept, text="Notes of **mine**.", missing=False):
        links = []
        for name, media, data in kept:
            uid = files.keep_bytes(practice, name, media, data)
            links.append(f"[{name} said](file:{uid})")
        if missing:
            links.append("![the lost map](file:no-such-uid)")
        body = "\n\n".join([*links, text])
        home = tabs.tab(practice, "Clippings")
        uid = leaves.add_leaf(practice, home, "A sheet", body, kind="handout", day="2026-05-16")
        page = lay(HandoutPage(session, look), session.spot_of(uid))
        settle(qtbot, page)
        return page

    return shown


def settle(qtbot, page):
    """Until nothing is read or drawn any more and the results have come."""
    for _ in range(3):
        page.wait()
        QApplication.processEvents()


def test_the_pages_of_a_pdf_are_leafed_through(show, qtbot):
    page = show(("sheet.pdf", "application/pdf", pdf_of((595, 842), (595, 842), (842, 595))))
    assert page.heading.accessibleDescription() == "16 May 2026"
    assert page.bar.count.text() == "Sheet 1 of 3"
    assert not page.bar.before.isEnabled()
    assert page.view.image.width() == pytest.approx(page.view.width(), abs=2)
    tall = page.view.height()
    assert tall == pytest.approx(page.view.width() * 842 / 595, abs=2)
    qtbot.mouseClick(page.bar.after, Qt.MouseButton.LeftButton)
    page.focus_in()
    qtbot.keyClick(page.view, Qt.Key.Key_PageDown)
    settle(qtbot, page)
    assert page.bar.count.text() == "Sheet 3 of 3"
    assert page.view.height() < tall
    assert not page.bar.after.isEnabled()
    qtbot.keyClick(page.view, Qt.Key.Key_PageDown)
    assert page.number == 2
    qtbot.keyClick(page.view, Qt.Key.Key_Home)
    assert page.number == 0
    qtbot.keyClick(page.view, Qt.Key.Key_End)
    qtbot.keyClick(page.view, Qt.Key.Key_PageUp)
    assert page.number == 1


def test_pictures_and_pdfs_stand_in_the_order_of_the_leaf(show, qtbot):
    page = show(
        ("map.png", "image/png", png(200, 100)),
        ("sheet.pdf", "application/pdf", pdf_of((595, 842))),
    )
    assert [sheet.name for sheet in page.sheets] == ["map.png", "sheet.pdf"]
    assert page.caption.toPlainText() == "map.png said"
    assert page.view.height() == pytest.approx(page.view.width() / 2, abs=2)
    page.step(1)
    assert page.caption.toPlainText() == "sheet.pdf said"


def test_notes_stand_below_without_the_links(show):
    page = show(("map.png", "image/png", png(20, 10)))
    assert page.notes.toPlainText() == "Notes of mine."
    assert page.notes.mapTo(page, QPoint()).y() > page.view.mapTo(page, QPoint()).y()


def test_one_picture_needs_no_turning(show):
    page = show(("map.png", "image/png", png(20, 10)))
    assert not page.bar.before.isVisible()
    assert not page.bar.count.isVisible()
    assert page.bar.larger.isVisible()


def test_enlarging_by_key_button_and_wheel(show, qtbot):
    page = show(("map.png", "image/png", png(2000, 1000)))
    page.focus_in()
    assert not page.bar.fit.isEnabled()
    qtbot.keyClick(page.view, Qt.Key.Key_Plus)
    qtbot.mouseClick(page.bar.larger, Qt.MouseButton.LeftButton)
    settle(qtbot, page)
    assert page.view.zoom == 2.0
    assert page.view.image.width() == pytest.approx(2 * page.view.width(), abs=2)
    wheel = QWheelEvent(
        QPointF(50, 50), QPointF(50, 50), QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.ControlModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(page.view, wheel)
    assert page.view.zoom == 2.8
    qtbot.keyClick(page.view, Qt.Key.Key_Minus)
    assert page.view.zoom == 2.0
    qtbot.mouseClick(page.bar.fit, Qt.MouseButton.LeftButton)
    assert page.view.zoom == 1.0
    qtbot.mouseDClick(page.view, Qt.MouseButton.LeftButton, pos=QPoint(10, 10))
    assert page.view.zoom == 2.0
    qtbot.keyClick(page.view, Qt.Key.Key_0)
    assert page.view.zoom == 1.0


def test_an_enlarged_sheet_is_moved_by_key_and_hand_and_stays_in_its_frame(show, qtbot):
    page = show(("map.png", "image/png", png(400, 400)))
    page.view.zoom_to(2.0)
    before = page.view._target().topLeft()
    qtbot.keyClick(page.view, Qt.Key.Key_Down)
    assert page.view._target().top() < before.y()
    qtbot.mousePress(page.view, Qt.MouseButton.LeftButton, pos=QPoint(200, 200))
    qtbot.mouseMove(page.view, QPoint(150, 200))
    qtbot.mouseRelease(page.view, Qt.MouseButton.LeftButton, pos=QPoint(150, 200))
    assert page.view._target().left() < before.x()
    for _ in range(40):
        qtbot.keyClick(page.view, Qt.Key.Key_Right)
    assert page.view._target().right() == pytest.approx(page.view.width(), abs=1)


@pytest.mark.parametrize(
    ("name", "media", "data", "sentence"),
    [
        ("torn.pdf", "application/pdf", b"%PDF-1.7 torn", "“torn.pdf” is damaged"),
        ("shut.pdf", "application/pdf", pdf_of((595, 842), password="x"), "locked with a password"),
        ("torn.png", "image/png", png(50, 50)[:60], "“torn.png” is damaged"),
        ("no.png", "image/png", b"not a picture", "“no.png” is damaged"),
    ],
)
def test_what_cannot_be_shown_is_said_in_place(show, qtbot, name, media, data, sentence):
    page = show((name, media, data))
    settle(qtbot, page)
    assert sentence in page.view.accessibleName()
    assert page.notes.isVisible()
    assert page.view.height() < 150
    page.view.grab()


def test_a_file_that_is_gone_does_not_hide_the_others(show, qtbot):
    page = show(("map.png", "image/png", png(20, 10)), missing=True)
    assert page.bar.count.text() == "Sheet 1 of 2"
    page.step(1)
    assert page.view.accessibleName() == "“the lost map” is not in this binder any more."
    assert page.bar.before.isVisible()


def test_a_handout_without_files_is_only_its_notes(show):
    page = show()
    assert not page.view.isVisible()
    assert not page.bar.isVisible()
    assert page.notes.toPlainText() == "Notes of mine."


def test_turning_to_another_leaf_shows_its_files(show, session, qtbot):
    first = show(("one.png", "image/png", png(30, 30)))
    other = show(("two.png", "image/png", png(30, 60)))
    first.show_spot(other.spot)
    settle(qtbot, first)
    assert [sheet.name for sheet in first.sheets] == ["two.png"]
    first.show_spot(first.spot)
    assert [sheet.name for sheet in first.sheets] == ["two.png"]


def test_a_copy_is_saved_or_the_reason_said(show, session, tmp_path, qtbot):
    data = png(30, 30)
    page = show(("one.png", "image/png", data))
    page.save_to(page.sheets[0], tmp_path / "copy.png")
    assert (tmp_path / "copy.png").read_bytes() == data
    with qtbot.waitSignal(session.said) as said:
        page.save_to(page.sheets[0], tmp_path / "nowhere" / "copy.png")
    assert "could not be written" in said.args[0]
    page._menu(QPoint(0, 0))
    menu = page.findChild(QMenu)
    assert [action.text() for action in menu.actions()] == [
        "&Write beside this page",
        "&Save a copy…",
    ]
    menu.close()


def test_the_sample_sheets_are_shown(session, look, lay, qtbot):
    practice = session.shelf.binder("Practice")
    entries = leaves.contents(practice, tabs.tab(practice, "Clippings"))
    uid = next(entry.uid for entry in entries if entry.kind == "handout")
    page = lay(HandoutPage(session, look), session.spot_of(uid))
    settle(qtbot, page)
    assert not page.view.image.isNull()
    assert not any(sheet.wrong for sheet in page.sheets)


# Words on the sheets


def written(*pages):
    """A PDF with those words, a page for each, from another library than the one that reads it."""
    import typst

    body = "\n#pagebreak()\n".join(pages)
    source = f'#set page(width: 300pt, height: 400pt)\n#set text(lang: "en")\n{body}'
    return typst.compile(source.encode(), format="pdf")


TALK = ("The Hermit walks twice.", "Éclairs by *moonlight*, and a hermit crab.", "Nothing here.")


@pytest.fixture
def talk(show):
    return show(("talk.pdf", "application/pdf", written(*TALK)))


def place_of(page, word):
    """Where a word stands in the view, its first and last letter."""
    at = page.view.words.letters.text.index(word)
    boxes = [page.view._placed(page.view.words._box(n)) for n in (at, at + len(word) - 1)]
    return [box.center().toPoint() for box in boxes]


def test_words_are_selected_with_the_mouse_and_copied(talk, qtbot):
    first, last = place_of(talk, "Hermit walks")
    qtbot.mousePress(talk.view, Qt.MouseButton.LeftButton, pos=first)
    qtbot.mouseMove(talk.view, last)
    qtbot.mouseRelease(talk.view, Qt.MouseButton.LeftButton, pos=last)
    qtbot.keyClick(talk.view, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QApplication.clipboard().text() == "Hermit walks"
    qtbot.mouseDClick(talk.view, Qt.MouseButton.LeftButton, pos=place_of(talk, "twice")[0])
    assert talk.view.words.text() == "twice"
    assert talk.view.zoom == 1.0
    qtbot.keyClick(talk.view, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    assert talk.view.words.text() == TALK[0]
    nowhere = QPoint(5, talk.view.height() - 5)
    qtbot.mouseClick(talk.view, Qt.MouseButton.LeftButton, pos=nowhere)
    assert talk.view.words.text() == ""
    talk.view.grab()


def test_words_are_found_within_the_handout(talk, qtbot):
    qtbot.keyClick(talk.view, "/")
    assert talk.find_row.field.hasFocus()
    qtbot.keyClicks(talk.find_row.field, "HERMIT")
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Return)
    settle(qtbot, talk)
    assert talk.find_row.told.text() == "1 of 2"
    assert talk.number == 0
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Return)
    settle(qtbot, talk)
    assert talk.number == 1
    assert talk.view.words.letters.text[slice(*talk.view.words.current)] == "hermit"
    qtbot.mouseClick(talk.find_row.after, Qt.MouseButton.LeftButton)
    settle(qtbot, talk)
    assert (talk.number, talk.find_row.told.text()) == (0, "1 of 2")
    talk.find_row.field.clear()
    qtbot.keyClicks(talk.find_row.field, "eclairs by moon")
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Return)
    settle(qtbot, talk)
    assert (talk.number, talk.find_row.told.text()) == (1, "1 of 1")
    qtbot.keyClicks(talk.find_row.field, "zzz")
    qtbot.waitUntil(lambda: talk.find_row.told.text() == "not found", timeout=2000)
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Escape)
    assert talk.view.hasFocus()


def test_find_on_the_shelf_opens_the_page_with_the_word(talk, session, qtbot):
    from binder.study.finding import find_all, marked_words

    (group,) = find_all(session.shelf, "eclairs").groups
    assert group.hits[0].uid == talk.spot.leaf
    talk.show_spot(talk.spot, tuple(marked_words(group.hits[0])))
    settle(qtbot, talk)
    settle(qtbot, talk)
    assert talk.number == 1
    assert talk.view.words.letters.text[slice(*talk.view.words.current)] == "Éclairs"


def test_words_found_in_the_notes_are_not_sought_on_the_sheets(talk, qtbot):
    talk.show_spot(talk.spot, ("mine",))
    settle(qtbot, talk)
    settle(qtbot, talk)
    assert talk.number == 0
    assert talk.find_row.field.text() == talk.find_row.told.text() == ""
    assert talk.notes.first_mark() is not None


def test_tab_reaches_everything_on_the_leaf(talk, qtbot):
    talk.tick.setFocus()
    reached = []
    for _ in range(9):
        qtbot.keyClick(talk.window().focusWidget(), Qt.Key.Key_Tab)
        reached.append(talk.window().focusWidget())
    wanted = (talk.bar.count, talk.bar.after, talk.bar.larger, talk.find_row.field, talk.view,
              talk.beside.link)  # fmt: skip
    places = [reached.index(part) for part in wanted]
    assert places == sorted(places)
    assert all(part.accessibleName() or part.text() for part in wanted)


def test_a_scan_says_quietly_that_it_holds_no_words(show):
    page = show(("scan.pdf", "application/pdf", pdf_of((300, 400))))
    assert "as in a scan" in page.quiet.toPlainText()
    assert not page.find_row.isVisible()


def test_the_wheel_scrolls_and_then_turns_sheets(talk, qtbot):
    def wheel(by):
        event = QWheelEvent(
            QPointF(50, 50), QPointF(50, 50), QPoint(), QPoint(0, by), Qt.MouseButton.NoButton,
            Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(talk.view, event)

    bar = talk.verticalScrollBar()
    bar.setValue(bar.minimum())
    if bar.maximum():
        wheel(-120)
        assert talk.number == 0
    bar.setValue(bar.maximum())
    qtbot.wait(200)
    wheel(-120)
    assert talk.number == 1
    bar.setValue(bar.maximum())
    wheel(-120)
    assert talk.number == 1  # a spin does not run off
    bar.setValue(bar.minimum())
    qtbot.wait(200)
    wheel(120)
    assert talk.number == 0


def test_a_sheet_is_asked_for_by_its_number(talk, monkeypatch, qtbot):
    from PySide6.QtWidgets import QInputDialog

    monkeypatch.setattr(QInputDialog, "getInt", lambda *_: (3, True))
    qtbot.mouseClick(talk.bar.count, Qt.MouseButton.LeftButton)
    assert talk.bar.count.text() == "Sheet 3 of 3"


# Notes beside pages


def test_notes_stand_beside_their_pages_and_are_listed(talk, session, qtbot):
    session.changed.connect(lambda _notice: talk.show_spot(talk.spot))
    qtbot.mouseClick(talk.beside.link, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(talk.beside.editor, "Why *twice*?")
    qtbot.keyClick(talk.beside.editor, Qt.Key.Key_Escape)
    assert talk.beside_note.toPlainText() == "Why twice?"
    talk.step(2)
    settle(qtbot, talk)
    assert not talk.beside_note.isVisible()
    qtbot.mouseClick(talk.beside.link, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(talk.beside.editor, "The last one.")
    talk.step(-1)
    assert talk.list.toPlainText().splitlines() == ["Page 1", "Why twice?", "Page 3",
                                                    "The last one."]  # fmt: skip
    talk._follow(talk.list, talk.list.links()[1].address)
    assert talk.number == 2
    binder = session.binder_of(talk.spot)
    assert binder.gate.undo() == "Write beside page 3"
    assert talk.list.toPlainText().splitlines() == ["Page 1", "Why twice?"]
    talk.turn_to(0)
    qtbot.mouseClick(talk.beside.link, Qt.MouseButton.LeftButton)
    talk.beside.editor.selectAll()
    qtbot.keyClick(talk.beside.editor, Qt.Key.Key_Delete)
    session.leaving.emit()
    assert not talk.list.isVisible()


def test_a_note_being_written_is_saved_by_itself_and_stays_open(talk, session, qtbot):
    from binder.study.page_notes import page_notes

    session.changed.connect(lambda _notice: talk.show_spot(talk.spot))
    talk.beside.write()
    qtbot.keyClicks(talk.beside.editor, "Half a th")
    binder = session.binder_of(talk.spot)
    qtbot.waitUntil(lambda: len(page_notes(binder, talk.spot.leaf)) == 1, timeout=5000)
    assert talk.beside.writing
    assert talk.beside.editor.hasFocus()
    qtbot.keyClicks(talk.beside.editor, "ought")
    talk.beside.shut()
    assert [note.text for note in page_notes(binder, talk.spot.leaf)] == ["Half a thought"]


# On paper


def test_a_handout_is_ticked_off_as_printed(talk, session, qtbot):
    from binder.study import on_paper

    session.changed.connect(lambda _notice: talk.show_spot(talk.spot))
    binder = session.binder_of(talk.spot)
    qtbot.mouseClick(talk.tick, Qt.MouseButton.LeftButton, pos=QPoint(8, talk.tick.height() // 2))
    assert on_paper.ticked(binder, talk.spot.leaf)
    assert talk.tick.text().startswith("Printed and filed on paper, ")
    qtbot.keyClick(talk.tick, Qt.Key.Key_Space)
    assert not on_paper.ticked(binder, talk.spot.leaf)
    assert binder.gate.undo() == "Take away the tick of printing"
    assert talk.tick.isChecked()


# Bad and large files


def test_a_picture_made_to_fill_memory_is_refused_with_a_sentence(show):
    out = io.BytesIO()
    Image.new("1", (20_000, 10_000)).save(out, "PNG")
    page = show(("bomb.png", "image/png", out.getvalue()))
    assert "200 million pixels" in page.view.accessibleName()


def test_two_thousand_pages_are_turned_one_by_one(show, qtbot):
    page = show(("long.pdf", "application/pdf", pdf_of(*[(300, 400)] * 2000)))
    assert page.bar.count.text() == "Sheet 1 of 2,000"
    qtbot.keyClick(page.view, Qt.Key.Key_End)
    settle(qtbot, page)
    assert page.number == 1999
    assert not page.view.image.isNull()
