"""The plan leaf of the sample's first binder, as both its tests open it."""

import pytest

from binder.study.course import course
from ui.leaves.course.plan import PlanPage


@pytest.fixture
def foundations(session):
    return session.shelf.binder("Foundations")


@pytest.fixture
def page(session, look, lay, foundations):
    made = lay(PlanPage(session, look), session.spot_of(course.plan_leaf(foundations)))
    session.changed.connect(lambda _notice: made.show_spot(made.spot))
    yield made
    if made.dialog is not None:
        made.dialog.reject()
