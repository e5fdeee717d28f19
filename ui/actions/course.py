"""The course: its plan, and going on from level to level."""

from __future__ import annotations

from binder.study.course import course
from binder.study.dates import written
from binder.study.overview import level
from ui.actions.base import Base, leaving
from ui.kit.forms import asking


class CourseActions(Base):
    """They ask about the open binder."""

    def plan(self) -> None:
        """The leaf that shows the units of the open binder; laid out where there is none yet."""
        binder = self.open_binder()
        self.session.open_leaf(course.plan_leaf(binder) or course.lay_plan_leaf(binder))

    @leaving
    def finish_level(self) -> None:
        """See what stands and what is thin, then go on; a finished level is taken up again."""
        from ui.leaves.course.level_dialog import LevelDialog

        binder, shelf = self.open_binder(), self.session.shelf
        if course.finished(binder):
            ended = written(course.finished(binder))
            question = f"“{binder.name}” was finished on {ended}. Study it again?"
            if not asking.sure(self.window, "Take this level up again", question, "Study it again"):
                return
            level.take_up_again(binder)
            self.session.said.emit(f"“{binder.name}” is studied again; Undo takes that back.")
            return
        found, then = level.level(shelf, binder), level.after(shelf, binder)
        dialog = LevelDialog(self.theme_look, found, then.name if then else "", self.window)
        if self.ask(dialog):
            level.finish(binder, self.session.today, found if dialog.filed else None, then)
            if then is not None:
                self.session.open_leaf(course.plan_leaf(then) or "")
            self.session.said.emit(f"“{binder.name}” is finished; Undo takes that back.")
        elif dialog.gone_to:
            self.session.open_leaf(dialog.gone_to.partition(":")[2])
