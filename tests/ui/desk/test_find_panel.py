"""The find panel over the sample shelf: found while typing, walked by key, opened with marks."""

import threading

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from binder.study import dates
from binder.study.leaves import leaves
from binder.study.overview.finding import AT_ONCE, find_all
from tests.ui.driving import (
    CTRL,
    K,
    answering,
    click,
    key,
    keys,
    left,
    named,
    settle,
    spine,
    tab_of,
)
from ui.actions.installed import actions_of


def found(window):
    """Leaves listed, in order."""
    return [row.hit for row in window.finder.model.rows if row.hit]


def heads(window):
    return [row.head for row in window.finder.model.rows if not row.hit]


def look_for(window, words, wait=True):
    """Ctrl+F and type; wait until the panel has its answer."""
    key(window, K.Key_F, CTRL)
    keys(window, words)
    if wait:
        window.finder.job.wait()
        settle()


def marked(window):
    row = window.finder.list.currentIndex().row()
    return window.finder.model.rows[row].hit


class TestTyping:
    def test_it_finds_while_one_types_grouped_by_binder_and_tab(self, window):
        look_for(window, "quay")
        assert window.finder.isVisible()
        assert len(found(window)) > 3
        assert any(head.startswith("Practice, ") for head in heads(window))
        assert window.focusWidget() is window.bar.find_field

    def test_the_first_leaf_is_marked(self, window):
        look_for(window, "quay")
        assert marked(window) == found(window)[0]

    def test_the_last_word_may_be_half_typed(self, window):
        look_for(window, "works")
        assert any("workshop" in hit.line.casefold() for hit in found(window))

    def test_nothing_found_is_said(self, window):
        look_for(window, "zanzibar")
        assert window.finder.isVisible()
        assert window.finder.note.text() == "No leaf has “zanzibar”."
        assert not window.finder.list.isVisible()

    def test_a_day_finds_what_is_dated_on_it(self, window):
        (reading,) = window.session.shelf.binder("Practice").sql(
            "SELECT title, day FROM leaf WHERE kind = 'reading' AND aside IS NULL LIMIT 1"
        )
        look_for(window, reading[1][:10])
        assert window.finder.note.text().startswith(f"Read as {dates.written(reading[1])}.")
        assert reading[0] in [hit.title for hit in found(window)]

    def test_a_day_on_which_nothing_was_written_is_told_in_words(self, window):
        look_for(window, "3 Feb 1999")
        assert window.finder.note.text() == ("No leaf has “3 Feb 1999”.\nRead as 3 February 1999.")

    def test_an_emptied_box_shuts_it(self, window):
        look_for(window, "quay")
        key(window, K.Key_A, CTRL)
        key(window, K.Key_Backspace)
        assert not window.finder.isVisible()

    @pytest.mark.parametrize("words", ['"', "AND", "NEAR(", "(*", "a:b", "'", '"the star', "-"])
    def test_any_words_are_a_question(self, window, words):
        look_for(window, words)
        assert not window.said.isVisible()

    def test_an_older_answer_never_takes_the_place_of_a_newer(self, window):
        key(window, K.Key_F, CTRL)
        for words in ("quay", "ferry", "zanzibar", "lantern"):
            window.finder.seek(words)
        window.finder.job.wait()
        settle()
        groups = find_all(window.session.shelf, "lantern").groups
        assert found(window) == [hit for group in groups for hit in group.hits]
        assert found(window)


class TestKeys:
    def test_arrows_walk_over_leaves_and_never_stand_on_a_head(self, window):
        look_for(window, "quay")
        walked = [marked(window)]
        for _ in range(len(found(window)) + 2):
            key(window, K.Key_Down)
            walked.append(marked(window))
        assert walked[: len(found(window))] == found(window)
        assert walked[-1] == found(window)[-1]
        for _ in range(len(found(window)) + 2):
            key(window, K.Key_Up)
        assert marked(window) == found(window)[0]
        key(window, K.Key_PageDown)
        assert marked(window) == found(window)[6]

    def test_enter_opens_the_marked_leaf_with_its_words_marked(self, window):
        look_for(window, "quay")
        key(window, K.Key_Down)
        hit = marked(window)
        key(window, K.Key_Return)
        assert left(window).uid == hit.uid
        assert window.session.marks
        assert not window.finder.isVisible()
        page = window.cover.leaf("left")
        assert page is window.focusWidget() or page.isAncestorOf(window.focusWidget())

    def test_enter_before_the_answer_opens_the_best_leaf_when_it_comes(self, window, qtbot):
        look_for(window, "quay", wait=False)
        key(window, K.Key_Return)
        qtbot.waitUntil(lambda: left(window) is not None, timeout=5000)
        assert "quay" in (left(window).title + left(window).text).casefold()
        assert not window.finder.isVisible()

    def test_escape_shuts_then_empties_then_leaves(self, window):
        look_for(window, "quay")
        key(window, K.Key_Escape)
        assert not window.finder.isVisible()
        assert window.bar.find_field.text() == "quay"
        key(window, K.Key_Escape)
        assert window.bar.find_field.text() == ""
        key(window, K.Key_Escape)
        assert window.focusWidget() is not window.bar.find_field
        assert window.cover.holds_focus()

    def test_down_brings_it_back_for_the_same_words(self, window):
        look_for(window, "quay")
        key(window, K.Key_Escape)
        key(window, K.Key_Down)
        window.finder.job.wait()
        settle()
        assert window.finder.isVisible()


class TestMouse:
    def test_a_click_opens_a_leaf(self, window):
        look_for(window, "quay")
        row = next(n for n, r in enumerate(window.finder.model.rows) if r.hit)
        view = window.finder.list
        at = view.visualRect(view.model().index(row, 0)).center()
        QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=at)
        settle()
        assert left(window).uid == window.finder.model.rows[row].hit.uid

    def test_a_click_elsewhere_shuts_it(self, window):
        look_for(window, "quay")
        click(spine(window, "Mastery"))
        assert not window.finder.isVisible()

    def test_the_loupe_opens_the_best(self, window):
        look_for(window, "quay")
        best = found(window)[0]
        click(named(window.bar, "Find"))
        assert left(window).uid == best.uid


class TestRoom:
    @pytest.mark.parametrize("size", [(1600, 1000), (1100, 700), (800, 600)])
    @pytest.mark.parametrize("scale", [1.0, 1.5])
    def test_it_lies_within_the_window_under_the_box(self, window, size, scale):
        window.resize(*size)
        window.look.set_scale(scale)
        look_for(window, "quay")
        area = window.finder.geometry()
        assert window.rect().contains(area)
        box = window.bar.find_field
        assert area.top() >= box.mapTo(window, box.rect().bottomLeft()).y()
        assert area.height() > 100
        window.look.set_scale(1.0)

    def test_it_follows_the_window(self, window):
        look_for(window, "quay")
        window.resize(900, 600)
        settle()
        assert window.rect().contains(window.finder.geometry())


class TestBeside:
    def test_typing_is_never_held_up(self, window, monkeypatch):
        """While a search takes long, keys arrive at once."""
        from ui.desk import find

        go, held, over, whole = *(threading.Event() for _ in range(3)), find.find_all

        def slow(*given, **more):
            held.set()
            go.wait(5)
            over.set()
            return whole(*given, **more)

        monkeypatch.setattr(find, "find_all", slow)
        look_for(window, "q", wait=False)
        assert held.wait(5)
        keys(window, "uay")
        assert window.bar.find_field.text() == "quay"
        assert not over.is_set()
        go.set()
        window.finder.job.wait()
        settle()
        assert found(window)

    def test_closing_during_a_search_is_no_trouble(self, window, monkeypatch):
        from ui.desk import find

        go, held, whole = threading.Event(), threading.Event(), find.find_all

        def slow(*given, **more):
            held.set()
            go.wait(5)
            return whole(*given, **more)

        monkeypatch.setattr(find, "find_all", slow)
        look_for(window, "quay", wait=False)
        assert held.wait(5)
        window.session.leaving.connect(go.set)
        window.close()
        settle()
        assert not window.isVisible()

    def test_what_was_written_a_moment_ago_is_found(self, window):
        binder = window.session.shelf.binder("Practice")
        tab = tab_of(window, "Clippings", "Practice")
        uid = leaves.add_leaf(binder, tab, "Rope", "A word like xylograph.")
        look_for(window, "xylog")
        assert [hit.uid for hit in found(window)] == [uid]

    def test_a_binder_taken_off_is_not_searched(self, window):
        from tests.ui.driving import presses

        answering(presses("Set it aside"))
        actions_of(window).take_off(window.session.shelf.binder("Practice").uid)
        look_for(window, "quay")
        assert all(hit.binder != "Practice" for hit in found(window))


class TestReadAs:
    def test_a_misspelt_word_is_answered_and_enter_takes_the_nearest(self, window):
        look_for(window, "lantrn")
        assert window.finder.model.rows[0].words == "lantrn: did you mean lantern?"
        assert window.finder.note.text() == "No leaf has “lantrn”."
        key(window, K.Key_Return)
        window.finder.job.wait()
        settle()
        assert window.bar.find_field.text() == "lantern"
        assert found(window)

    def test_a_click_takes_the_nearest_too(self, window):
        look_for(window, "lantrn")
        view = window.finder.list
        at = view.visualRect(view.model().index(0, 0)).center()
        QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=at)
        window.finder.job.wait()
        settle()
        assert window.bar.find_field.text() == "lantern"
        assert window.finder.isVisible()

    def test_how_a_season_was_read_is_said_below(self, window):
        look_for(window, "spring")
        assert found(window)
        assert window.finder.note.text().startswith("Read as spring, March to May of any year.")

    def test_all_are_counted_and_more_come_as_one_goes_down(self, window):
        look_for(window, "e")
        first = [hit.uid for hit in found(window)]
        assert len(first) == AT_ONCE
        window.finder.wait()
        settle()
        total = int(window.finder.note.text().split()[0].replace(",", ""))
        assert total > AT_ONCE
        assert window.finder.note.text().endswith("leaves found.")
        for _ in range(total):
            key(window, K.Key_PageDown)
            window.finder.wait()
            settle()
            if not window.finder.model.more:
                break
        uids = [hit.uid for hit in found(window)]
        assert uids[: len(first)] == first
        assert len(uids) == len(set(uids)) == total

    def test_a_source_is_shown_by_author_and_title(self, window):
        look_for(window, "perpetua lisle")
        shown = [row.words for row in window.finder.model.rows if row.hit]
        assert any(words.startswith("Perpetua Lisle, Upside Down") for words in shown)
        assert not any("{" in words for words in shown)
