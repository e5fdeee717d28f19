"""The gate: one step is one transaction, told once, undone and redone whole."""

from hypothesis import given
from hypothesis import strategies as st

from binder.store.file import create
from binder.store.schema import Info, Leaf, OwnWords, Tab
from binder.study.cards import words
from binder.study.kinds import LeafKind
from binder.study.leaves import drawer, leaves, tabs
from tests.profiles import fewer


def rows(binder):
    return {
        model: sorted(map(str, binder.all(model.select().tuples())))
        for model in (Info, Tab, Leaf, OwnWords)
    }


def test_one_notice_for_one_step(binder):
    told = []
    binder.listen(told.append)
    with binder.change("two things"):
        tabs.add_tab(binder, "A")
        tabs.add_tab(binder, "B")
    assert [notice.label for notice in told] == ["two things"]
    assert len(told[0].rows) == 2
    assert told[0].touches("tab")
    assert not told[0].touches("leaf")


def test_half_a_character_is_kept_as_a_mark_instead_of_losing_the_rest(binder):
    tab = tabs.tab(binder, "Notes")
    uid = leaves.add_leaf(binder, tab, "A \udcff leaf", "words \ud83d and more")
    view = leaves.leaf(binder, uid)
    assert (view.title, view.text) == ("A \ufffd leaf", "words \ufffd and more")


def test_a_listener_can_stop_listening(binder):
    told = []
    stop = binder.listen(told.append)
    stop()
    tabs.add_tab(binder, "A")
    assert told == []


def test_undo_of_a_removed_card_leaf_brings_its_own_words_back(binder, stood):
    tab = tabs.tab(binder, "Notes")
    uid = leaves.add_leaf(binder, tab, "The Star", kind=LeafKind.CARD, card="major-17")
    words.write_words(binder, uid, "upright", "Clear weather.")
    leaves.set_aside(binder, uid)
    before = rows(binder)
    (emptied,) = drawer.empty(stood)
    assert words.history(binder, uid) == []
    assert emptied.gate.undo() == "Empty the drawer"
    assert rows(binder) == before
    assert words.history(binder, uid)[0].text == "Clear weather."


def test_nothing_to_undo_is_no_error(binder):
    while binder.gate.undo():
        pass
    assert binder.gate.undo() is None
    assert binder.gate.undo_label() is None


STEPS = st.lists(
    st.tuples(
        st.sampled_from(["tab", "leaf", "rename", "aside", "move", "name"]), st.integers(0, 5)
    ),
    max_size=12,
)


def act(binder, verb, number):
    tab = tabs.tabs(binder)[number % len(tabs.tabs(binder))]
    entries = leaves.contents(binder, tab)
    if verb == "tab":
        tabs.add_tab(binder, f"Tab {number}")
    elif verb == "leaf":
        leaves.add_leaf(binder, tab, f"Leaf {number}")
    elif verb == "move":
        tabs.move_tab(binder, tab.uid, number)
    elif verb == "name":
        with binder.change("Rename") as change:
            change.put_info("name", f"Name {number}")
    elif entries and verb == "rename":
        leaves.rename(binder, entries[0].uid, f"Renamed {number}")
    elif entries:
        leaves.set_aside(binder, entries[0].uid)


@fewer(4)
@given(STEPS)
def test_undoing_everything_and_redoing_it_are_exact(tmp_path_factory, steps):
    binder = create(tmp_path_factory.mktemp("undo") / "b.ringbound", "B", "spineP")
    start = rows(binder)
    tabs.add_tab(binder, "First")
    for verb, number in steps:
        act(binder, verb, number)
    end = rows(binder)
    while binder.gate.undo():
        pass
    assert rows(binder) == start
    assert binder.gate.undo_label() is None
    while binder.gate.redo():
        pass
    assert rows(binder) == end
    binder.close()
