"""What each action of the window does. The names of the methods are those of ui.actions.keys."""

from ui.actions.card import CardDeeds
from ui.actions.course import CourseDeeds
from ui.actions.filing import FilingDeeds
from ui.actions.leaf import LeafDeeds
from ui.actions.links import LinkDeeds
from ui.actions.log import LogDeeds
from ui.actions.look import LookDeeds
from ui.actions.reading import ReadingDeeds
from ui.actions.shelf import ShelfDeeds
from ui.actions.sources import SourceDeeds
from ui.actions.study import StudyDeeds
from ui.actions.tab import TabDeeds
from ui.actions.table import TableDeeds
from ui.actions.turning import TurnDeeds


class Deeds(
    ShelfDeeds,
    TabDeeds,
    FilingDeeds,
    LeafDeeds,
    CardDeeds,
    ReadingDeeds,
    LogDeeds,
    TableDeeds,
    CourseDeeds,
    StudyDeeds,
    SourceDeeds,
    TurnDeeds,
    LinkDeeds,
    LookDeeds,
):
    """All of them."""


__all__ = ["Deeds"]
