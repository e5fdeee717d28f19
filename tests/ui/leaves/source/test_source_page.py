"""The leaf of a source, with real clicks and keys on the sample shelf."""

import pytest
from PySide6.QtCore import Qt

from binder.study.leaves import leaves, tabs
from binder.study.sources import sources
from tests.ui.driving import CTRL, SHIFT, answering, click, key, presses, settle, spine
from ui.actions.installed import actions_of
from ui.leaves.source.source import SourcePage


@pytest.fixture
def lisle(session):
    return sources.sources(session.shelf)["lisle"].leaf_uid


@pytest.fixture
def page(session, look, lay, lisle):
    made = lay(SourcePage(session, look), session.spot_of(lisle))
    session.changed.connect(lambda _notice: made.show_spot(made.spot))
    yield made
    if made.dialog is not None:
        made.dialog.reject()


def said(page):
    return [page.model.index(row, 0).data() for row in range(page.model.rowCount())]


def test_it_says_what_the_source_is(page):
    assert page.heading.accessibleName() == "Upside Down"
    assert page.heading.accessibleDescription() == (
        "Perpetua Lisle, Upside Down: a Short Book about Reversals"
    )
    assert page.facts.accessibleName() == "Kind: Book; Year: 2019; Cite it as: lisle"
    assert "Marchbank and Teasel" in page.fields.toPlainText()
    assert "The even pages are printed upside down" in page.notes.toPlainText()


def test_it_says_where_it_is_cited_and_leads_there(page, qtbot, session):
    rows = said(page)
    assert rows[0] == "The Fool, Reversed p. 40"
    assert any("in its text" in row for row in rows)
    page.list.setFocus()
    qtbot.keyClick(page.list, Qt.Key.Key_Down)
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.keyClick(page.list, Qt.Key.Key_Return)
    assert followed.args == [f"leaf:{page.model.rows[1].leaf_uid}"]
    at = page.list.visualRect(page.model.index(0, 0)).center()
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert followed.args == [f"leaf:{session.shelf.card_leaf('major-00')[1]}"]


def test_the_bibliography_is_changed_through_the_form(page, qtbot, session, lisle):
    cited = len(said(page))
    qtbot.mouseClick(page.button, Qt.MouseButton.LeftButton)
    form = page.dialog
    assert form.fields["author"].toPlainText() == "Perpetua Lisle"
    form.fields["issued"].selectAll()
    qtbot.keyClicks(form.fields["issued"], "2020")
    form.key.selectAll()
    qtbot.keyClicks(form.key, "lisle-2020")
    form.kind.setCurrentIndex(form.kind.findText("Leaflet"))
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert page.facts.accessibleName() == "Kind: Leaflet; Year: 2020; Cite it as: lisle-2020"
    assert len(said(page)) == cited
    assert sources.sources(session.shelf)["lisle-2020"].leaf_uid == lisle


def test_a_key_that_is_taken_is_said_in_the_form(page, qtbot):
    qtbot.mouseClick(page.button, Qt.MouseButton.LeftButton)
    form = page.dialog
    form.key.setText("tenpenny")
    qtbot.keyClick(form.key, Qt.Key.Key_Return)
    assert form.isVisible()
    assert "the key of “Cards at the Kitchen Table” already" in form.wrong.text()


def test_a_new_source_leaf_asks_for_everything(session, look, lay, qtbot):
    practice = session.shelf.binder("Practice")
    uid = leaves.add_leaf(practice, tabs.tab(practice, "Sources"), "New leaf", kind="source")
    page = lay(SourcePage(session, look), session.spot_of(uid))
    session.changed.connect(lambda _notice: page.show_spot(page.spot))
    for part in (page.facts, page.fields, page.notes_head, page.cited_head, page.list):
        assert not part.isVisible()
    page.ask()
    form = page.dialog
    form.title.setText("Ferry Cards: a Year of Crossings")
    qtbot.keyClicks(form.fields["author"], "Orme, T.")
    form.key.setText("orme")
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert page.heading.accessibleName() == "Ferry Cards"
    assert page.heading.accessibleDescription().startswith("T. Orme")


def test_an_address_is_a_link_and_odd_fields_are_shown(page, session, lisle):
    practice = session.shelf.binder("Practice")
    fields = {"type": "zine", "URL": "https://example.org/<x>", "odd": "<b>bold</b>"}
    sources.set_source(practice, lisle, "lisle", fields)
    assert page.facts.accessibleName().startswith("Kind: zine")
    assert [link.address for link in page.fields.links()] == ["https://example.org/<x>"]
    assert "<b>bold</b>" in page.fields.toPlainText()
    page.ask()
    assert page.dialog.kind.currentText() == "zine"


def test_a_mistyped_number_is_said_beside_its_field_and_kept_on_request(page, qtbot, session):
    page.ask()
    form = page.dialog
    isbn = form.fields["ISBN"]
    qtbot.keyClicks(isbn.line, "978-0-306-40615-8")
    assert "a digit is mistyped" in isbn.hint.text()
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert form.isVisible()
    assert "a digit is mistyped" in form.wrong.text()
    isbn.as_is.setChecked(True)
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert sources.sources(session.shelf)["lisle"].fields["ISBN"] == "978-0-306-40615-8"


def test_the_form_asks_what_the_kind_has(page, qtbot):
    page.ask()
    form = page.dialog
    assert form.fields["ISBN"].isVisibleTo(form)
    form.kind.setCurrentIndex(form.kind.findText("Talk"))
    assert form.fields["event-title"].isVisibleTo(form)
    assert not form.fields["ISBN"].isVisibleTo(form)


def test_it_leads_across_cards(page, qtbot):
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.mouseClick(page.across, Qt.MouseButton.LeftButton)
    assert followed.args == ["across:lisle"]


def test_a_source_in_the_drawer_is_still_read(page, session, lisle):
    leaves.set_aside(session.shelf.binder("Practice"), lisle)
    assert page.heading.accessibleName() == "Upside Down"


@pytest.mark.parametrize("size", [(314, 500), (524, 850)])
def test_nothing_is_wider_than_the_leaf(session, look, lay, lisle, size):
    page = lay(SourcePage(session, look), session.spot_of(lisle), *size)
    assert page.horizontalScrollBar().maximum() == 0


class TestKeys:
    def test_the_first_field_has_the_keyboard_and_enter_keeps(self, page, qtbot):
        page.ask()
        form = page.dialog
        assert form.windowTitle() == "Source details"
        qtbot.waitUntil(lambda: form.title.hasFocus())
        qtbot.keyClick(form.title, Qt.Key.Key_End)
        qtbot.keyClicks(form.title, ", again")
        qtbot.keyClick(form.title, Qt.Key.Key_Return)
        assert not form.isVisible()
        assert page.heading.accessibleDescription().endswith("Reversals, again")

    def test_enter_keeps_among_the_authors_too_and_shift_begins_another(self, page, qtbot, session):
        page.ask()
        authors = page.dialog.fields["author"]
        authors.setFocus()
        qtbot.keyClick(authors, Qt.Key.Key_End, Qt.KeyboardModifier.ControlModifier)
        qtbot.keyClick(authors, Qt.Key.Key_Return, Qt.KeyboardModifier.ShiftModifier)
        qtbot.keyClicks(authors, "Tess Orme")
        qtbot.keyClick(authors, Qt.Key.Key_Return)
        assert page.dialog is None
        assert sources.sources(session.shelf)["lisle"].author == "Perpetua Lisle and Tess Orme"

    def test_escape_asks_before_filled_fields_go(self, page, qtbot):
        page.ask()
        form = page.dialog
        qtbot.keyClicks(form.title, "More")
        answering(presses("Go on writing"))
        qtbot.keyClick(form.title, Qt.Key.Key_Escape)
        assert form.isVisible()
        assert form.title.text().endswith("More")
        answering(presses("Let it go"))
        qtbot.keyClick(form.title, Qt.Key.Key_Escape)
        assert page.dialog is None

    def test_escape_shuts_an_untouched_form(self, page, qtbot):
        page.ask()
        qtbot.keyClick(page.dialog.title, Qt.Key.Key_Escape)
        assert page.dialog is None

    def test_what_an_empty_field_says_could_be_no_value(self, page):
        page.ask()
        form = page.dialog
        lines = [form.key, *(f for f in form.fields.values() if hasattr(f, "placeholderText"))]
        for said in (line.placeholderText() for line in lines):
            assert not said or " " in said


class TestReached:
    def test_the_menu_leads_to_the_tab_of_sources(self, window):
        click(spine(window, "Foundations"))
        actions_of(window).sources()
        session = window.session
        assert (session.binder.name, session.tab.name) == ("Practice", "Sources")

    def test_the_leaf_of_a_card_leads_there(self, window):
        session = window.session
        session.open_leaf(session.shelf.card_leaf("major-17")[1])
        settle()
        page = window.cover.leaf("left")
        page.finish()
        assert "sources:" in [link.address for link in page.side.links()]
        page.followed.emit("sources:")
        settle()
        assert session.tab.name == "Sources"

    def test_the_key_that_cites_says_what_it_is_for_away_from_the_editor(self, window):
        window.session.open_leaf(window.session.shelf.card_leaf("major-17")[1])
        settle()
        key(window, Qt.Key.Key_S, CTRL | SHIFT)
        assert "links to a source while you write" in window.said.text()
