"""What each action of the window does. The names of the methods are those of ui.keys."""

from ui.deeds.card import CardDeeds
from ui.deeds.course import CourseDeeds
from ui.deeds.filing import FilingDeeds
from ui.deeds.leaf import LeafDeeds
from ui.deeds.links import LinkDeeds
from ui.deeds.log import LogDeeds
from ui.deeds.look import LookDeeds
from ui.deeds.reading import ReadingDeeds
from ui.deeds.shelf import ShelfDeeds
from ui.deeds.sources import SourceDeeds
from ui.deeds.study import StudyDeeds
from ui.deeds.tab import TabDeeds
from ui.deeds.table import TableDeeds
from ui.deeds.turning import TurnDeeds


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
