"""What each line of the table does: all actions of a window in one class."""

from ui.actions.card import CardActions
from ui.actions.course import CourseActions
from ui.actions.filing import FilingActions
from ui.actions.layout import LayoutActions
from ui.actions.leaf import LeafActions
from ui.actions.links import LinkActions
from ui.actions.log import LogActions
from ui.actions.look import LookActions
from ui.actions.reading import ReadingActions
from ui.actions.shelf import ShelfActions
from ui.actions.slips import SlipActions
from ui.actions.sources import SourceActions
from ui.actions.study import StudyActions
from ui.actions.tab import TabActions
from ui.actions.turning import TurnActions


class Actions(
    ShelfActions,
    TabActions,
    FilingActions,
    LeafActions,
    CardActions,
    ReadingActions,
    LogActions,
    LayoutActions,
    CourseActions,
    StudyActions,
    SourceActions,
    TurnActions,
    LinkActions,
    LookActions,
    SlipActions,
):
    """All of them."""
