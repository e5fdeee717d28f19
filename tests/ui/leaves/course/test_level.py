"""From level to level in the whole window: the plan, what stands and is thin, the next binder."""

from PySide6.QtWidgets import QDialogButtonBox

from binder.study.course import course
from binder.study.leaves import leaves, tabs
from tests.ui import driving


def foundations(window):
    return window.session.shelf.binder("Foundations")


def go_to_plan(window):
    window.session.open_binder(foundations(window).uid)
    window.actions_by_name["plan"].trigger()
    driving.settle()


def button(dialog, words):
    box = dialog.findChild(QDialogButtonBox)
    return next(b for b in box.buttons() if words in b.text().replace("&", ""))


def spine(window, name):
    return window.spines.button(window.session.shelf.binder(name).uid)


def test_the_menu_opens_the_plan_and_lays_one_where_there_is_none(window):
    go_to_plan(window)
    assert window.session.left.leaf == course.plan_leaf(foundations(window))
    practice = window.session.shelf.binder("Practice")
    for uid in filter(None, [course.plan_leaf(practice)]):
        leaves.set_aside(practice, uid)
    window.session.open_binder(practice.uid)
    window.actions_by_name["plan"].trigger()
    driving.settle()
    page = window.cover.leaf("left")
    assert (page.heading.accessibleName(), page.quiet.isVisible()) == ("The units", True)
    assert leaves.leaf(practice, window.session.left.leaf).number == 1


def test_a_level_is_finished_from_its_plan_and_undone(window, qtbot):
    go_to_plan(window)
    left = driving.answering(lambda dialog: driving.click(button(dialog, "Finish it and open")))
    driving.click(window.cover.leaf("left").finish_button)
    assert not left
    assert course.finished(foundations(window)) == "2026-11-25"
    assert window.session.binder.name == "Practice"
    assert spine(window, "Foundations").accessibleDescription() == "Finished on 25 November 2026"
    filed = leaves.contents(foundations(window), tabs.first_of_kind(foundations(window), "plan"))
    assert filed[-1].title == "Foundations on 25 November 2026"
    window.session.undo()
    driving.settle()
    assert course.finished(foundations(window)) == ""
    assert spine(window, "Foundations").accessibleDescription() == ""


def test_not_yet_changes_nothing(window):
    go_to_plan(window)
    before = foundations(window).gate.undo_label()
    driving.answering(lambda dialog: driving.click(button(dialog, "Not yet")))
    window.actions_by_name["finish_level"].trigger()
    assert foundations(window).gate.undo_label() == before


def test_a_link_in_the_list_leads_to_its_leaf(window):
    go_to_plan(window)

    def follow(dialog):
        link = next(one for one in dialog.text.links() if one.address.startswith("leaf:"))
        dialog.text.anchorClicked.emit(link.address)

    driving.answering(follow)
    window.actions_by_name["finish_level"].trigger()
    driving.settle()
    assert window.session.leaf_of(window.session.left).title == "Wands"
    assert course.finished(foundations(window)) == ""


def test_a_finished_level_is_taken_up_again(window):
    go_to_plan(window)

    def without_leaf(dialog):
        driving.click(dialog.file)
        driving.click(button(dialog, "Finish it"))

    driving.answering(without_leaf)
    window.actions_by_name["finish_level"].trigger()
    go_to_plan(window)
    page = window.cover.leaf("left")
    assert page.finish_button.text() == "Take this level up again"
    assert page.model.rowCount() == 7
    driving.answering(driving.presses("Study it again"))
    driving.click(page.finish_button)
    assert course.finished(foundations(window)) == ""
    assert page.finish_button.text() == "Finish this level…"


def test_card_leaves_of_a_finished_level_face_readings_of_the_next(window):
    go_to_plan(window)
    driving.answering(lambda dialog: driving.click(button(dialog, "Finish it and open")))
    window.actions_by_name["finish_level"].trigger()
    practice = window.session.shelf.binder("Practice")
    log = tabs.first_of_kind(practice, "readings")
    window.session.open_leaf(leaves.contents(practice, log)[0].uid)
    driving.settle()
    facing = window.session.leaf_of(window.session.facing)
    assert (facing.kind, facing.binder.name) == ("card", "Foundations")
