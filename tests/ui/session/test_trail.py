"""The trail: a way back, a way forward, and what a new step forgets."""

from hypothesis import given
from hypothesis import strategies as st

from ui.session.trail import NOWHERE, Show, Spot, Trail


def spot(name):
    return Spot(Show.LEAF, "binder", "tab", name)


def walked(*names):
    trail = Trail()
    for name in names:
        trail.go(spot(name), NOWHERE)
    return trail


def test_back_and_forward():
    trail = walked("a", "b", "c")
    assert trail.back() == (spot("b"), NOWHERE)
    assert trail.back() == (spot("a"), NOWHERE)
    assert trail.back() is None
    assert not trail.can_back
    assert trail.forward() == (spot("b"), NOWHERE)
    assert trail.forward() == (spot("c"), NOWHERE)
    assert trail.forward() is None
    assert not trail.can_forward


def test_a_new_step_forgets_what_lay_ahead():
    trail = walked("a", "b", "c")
    trail.back()
    trail.back()
    trail.go(spot("d"), NOWHERE)
    assert not trail.can_forward
    assert trail.back() == (spot("a"), NOWHERE)


def test_another_facing_leaf_is_no_step_of_its_own():
    trail = walked("a", "b")
    trail.go(spot("b"), spot("star"))
    trail.back()
    assert trail.forward() == (spot("b"), spot("star"))


def test_the_oldest_steps_are_forgotten_in_the_end():
    trail = Trail(longest=3)
    for number in range(10):
        trail.go(spot(str(number)), NOWHERE)
    seen = []
    while pair := trail.back():
        seen.append(pair[0].leaf)
    assert seen == ["8", "7"]


@given(st.lists(st.sampled_from(["back", "forward", "a", "b", "c"]), max_size=40))
def test_it_keeps_to_the_rules_of_two_stacks(steps):
    """Against two plain stacks, as any reader of a book with bookmarks would keep them."""
    trail, behind, ahead, here = Trail(), [], [], None
    for step in steps:
        if step == "back":
            if trail.back() is not None:
                ahead.append(here)
                here = behind.pop()
        elif step == "forward":
            if trail.forward() is not None:
                behind.append(here)
                here = ahead.pop()
        else:
            trail.go(spot(step), NOWHERE)
            if step != here:
                if here is not None:
                    behind.append(here)
                here, ahead = step, []
        assert (trail.can_back, trail.can_forward) == (bool(behind), bool(ahead))
