"""The writing desk: title and text of a leaf on the paper itself, and the fields of its kind."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import cast

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from binder.cards.prose import Mention
from binder.errors import RingboundError
from binder.page.address import Scheme, leads_to
from binder.store.change import Notice
from binder.store.file import Binder
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import LeafView
from ui.kit.forms.field import GrowingField
from ui.kit.forms.hints import Hint
from ui.kit.page.heads import SectionHead
from ui.kit.page.page import Page
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot
from ui.writing import write_menu
from ui.writing.body_part import BodyPart, State
from ui.writing.editor import rescue
from ui.writing.editor.editor import Editor
from ui.writing.editor.keeping import Keeping, Part
from ui.writing.editor.quote_hint import QuoteHint
from ui.writing.tools import Field, ToolRow, Tools
from ui.writing.write_fields import HEADS, KindFields, Remove
from ui.writing.write_hands import Hands
from ui.writing.write_text import TextFields

NEW_TITLE = "New leaf"
"""The title a new leaf has until the user gives it one."""


class Sheet(Page):
    """The part of the desk that scrolls."""

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Its parts are filled by the desk."""


class WritePage(QWidget):
    """Laid on the left leaf; everything typed is saved by itself."""

    done = Signal()
    """Writing is ended: the read leaf can come back."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session, self.look = session, look
        self.spot: Spot | None = None
        self.setAccessibleName("Writing")
        self.title = GrowingField(look, "Title of the leaf", role="leaf_title", colour="ink")
        self.title_said, self.said, self.bare = Hint(look), Hint(look), QuoteHint(look)
        self.texts, self.fields = TextFields(look), KindFields(session, look, self)
        self.keeping, self.part = Keeping(self), BodyPart(self, self._say)
        self._target: Field = self.texts.body
        self.tools = Tools(look, self, lambda: self._target)
        self.row = ToolRow(look, self.tools)
        self.hands = Hands(session, look, self, self._binder)
        self.finish = QPushButton("&Done")
        self._lay_out()
        self._connect()

    # Making

    def _lay_out(self) -> None:
        self.sheet = Sheet(self.session, self.look)
        self.sheet.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.body_head = SectionHead(self.look, "Notes")
        self.sheet.add(self.fields.own)
        self.sheet.add(self.fields.named, gap=10)
        self.sheet.add(self.fields.sides, gap=10)
        self.sheet.add(self.body_head, self.texts.body, self.texts.own, gap=6)
        self.sheet.add(self.fields.places, gap=10)
        self.sheet.add(self.fields.stated, gap=10)
        self.sheet.add(self.fields.described, gap=10)
        self.sheet.rows.addStretch(1)
        tools = QHBoxLayout()
        tools.setSpacing(8)
        tools.addWidget(self.row, 1)
        tools.addWidget(self.finish, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.title)
        column.addWidget(self.title_said)
        column.addLayout(tools)
        column.addWidget(self.said)
        column.addWidget(self.bare)
        column.addWidget(self.sheet, 1)
        column.addWidget(self.texts.long, 2)

    def _connect(self) -> None:
        self.finish.clicked.connect(self.done)
        self.title.entered.connect(self._to_text)
        self.title.textChanged.connect(self._title_typed)
        self.said.linkActivated.connect(self._put_back)
        fields: tuple[Field, ...] = (*self.styled, self.texts.long)
        for field in fields:
            field.edited.connect(self._typed)
            field.pasted.connect(partial(self.hands.paste, field))
            field.installEventFilter(self)
        for editor in self.styled:
            editor.find_names, editor.previews.load = self._find, self._picture
            editor.caret_moved.connect(partial(self._caret_moved, editor))
            editor.menu_asked.connect(partial(self._menu, editor))
            editor.followed.connect(self._follow)
        self.fields.edited.connect(self._typed)
        self.fields.removed.connect(self._remove)
        self.hands.connect_tools(self.tools)
        self.hands.amiss.connect(self.session.said)
        self.keeping.failed.connect(self._failed)
        self.keeping.said.connect(self.session.said)
        self.session.leaving.connect(self.leave)
        self.session.changed.connect(self._changed)
        cast(QApplication, QApplication.instance()).focusChanged.connect(self._focus_moved)

    @property
    def styled(self) -> list[Editor]:
        """The fields with live styles."""
        return [self.texts.body, self.texts.own, *self.fields.editors]

    # Opening

    def open(self, spot: Spot) -> None:
        """Show the leaf at `spot` to be written on."""
        self.spot = spot
        view = self._view()
        if view is None:
            return
        waiting = self.keeping.take_back(view.uid)
        self._show(view)
        for state in (one.state for one in waiting):
            if isinstance(state, State):
                self.adopt(state)
        self.keeping.open(view.uid, view.title, self._parts(view))
        self._offer(view)
        self.sheet.verticalScrollBar().setValue(0)
        if waiting:
            self.keeping.touch()

    def _view(self) -> LeafView | None:
        return self.session.leaf_of(self.spot) if self.spot else None

    def _binder(self) -> Binder | None:
        return self.session.binder_of(self.spot) if self.spot else None

    def _show(self, view: LeafView) -> None:
        self.title.start_with(view.title)
        self._say(self.texts.open(view))
        headed = view.kind in HEADS
        self.body_head.say(HEADS.get(view.kind, ""))
        self.body_head.setVisible(headed and not self.texts.is_long)
        self.sheet.setVisible(headed or not self.texts.is_long)
        self.part.open(view, self.texts.current.markdown())
        self.fields.open(view)
        self._target = self.texts.current
        self._look_at_quotes()

    def _look_at_quotes(self) -> None:
        own = [] if self.fields.own.isHidden() else self.fields.own.editors
        self.bare.look(() if self.texts.is_long else (self.texts.current, *own))

    def _parts(self, view: LeafView) -> list[Part]:
        return [self.part, *self.fields.parts(view.kind)]

    def _offer(self, view: LeafView) -> None:
        """Say where words lie that could not be saved the last time."""
        path = rescue.found(view.uid)
        if path is not None:
            self._say(
                "Words of this leaf that were not saved lie in "
                f"“{path}”. <a href='put'>Put them in at the end</a>"
            )

    def _put_back(self, _address: str) -> None:
        view = self._view()
        words = rescue.words(view.uid, view.title) if view else ""
        if view is None or not words:
            return
        text = self.texts.current
        text.moveCursor(text.textCursor().MoveOperation.End)
        # What was put by while one typed has the whole leaf in it, as far as it was saved too.
        fresh = words.removeprefix(view.text.strip()).strip()
        if fresh:
            text.put_block(fresh, into=-1)
        if self.save():
            rescue.forget(view.uid)
            self._say("")

    def foot(self) -> str:
        """What stands at the foot of the leaf: where it is kept."""
        view = self._view()
        return view.tab if view else ""

    # Where the keyboard goes

    def focus_in(self) -> None:
        """The keyboard where writing begins: a new leaf's title, own words, or the text's end."""
        view = self._view()
        if view is not None and not view.text and self.title.toPlainText() == NEW_TITLE:
            self.title.setFocus()
            self.title.selectAll()
        else:
            self._to_text()

    def _to_text(self) -> None:
        view = self._view()
        if view is None:
            return
        card = view.kind is LeafKind.CARD
        first: Field = self.fields.own.editors[0] if card else self.texts.current
        first.setFocus(Qt.FocusReason.OtherFocusReason)
        move = first.textCursor().MoveOperation
        first.moveCursor(move.End)
        if isinstance(first, Editor) and first.height() > self.sheet.viewport().height():
            first.moveCursor(move.Start)

    def setFocus(self, *_reason: object) -> None:
        """Whoever gives the desk the keyboard means the field to write in."""
        self.focus_in()

    def _caret_moved(self, editor: Editor, rect: QRect) -> None:
        if editor.hasFocus():
            self.sheet.show_rect(editor, rect)
            self.tools.look_at(editor)

    def _focus_moved(self, _before: QWidget | None, now: QWidget | None) -> None:
        """A field that gets the keyboard comes into sight; in an editor the cursor does."""
        if now is not None and not isinstance(now, Editor) and self.sheet.isAncestorOf(now):
            self.sheet.settle()
            self.sheet.ensureWidgetVisible(now, 0, self.look.theme.px(40))

    # Title and text, as BodyPart asks for them

    def state(self) -> State:
        """Title and text as they stand."""
        title = " ".join(self.title.toPlainText().split())
        return State(title, self.texts.current.markdown())

    def adopt(self, state: State) -> None:
        """Put in what was written elsewhere."""
        self.title.set_text(state.title)
        if self.texts.current.markdown() != state.text:
            self.texts.current.replace_all(state.text)

    # Saving

    def save(self) -> bool:
        """Save now; False where something could not be saved."""
        return self.spot is None or self.keeping.keep()

    def leave(self) -> None:
        """Another leaf is about to be opened: nothing may be lost."""
        if self.spot is not None:
            self.keeping.leave()

    def _typed(self) -> None:
        view = self._view()
        if view is not None:
            self.keeping.parts = self._parts(view)
        self._look_at_quotes()
        self.keeping.touch()

    def _title_typed(self) -> None:
        kept = f"A leaf needs a title; until you write one it keeps “{self.keeping.title}”."
        missing = not self.title.toPlainText().strip()
        self.title_said.say(kept if missing else "", wrong=True)
        self.keeping.touch()

    def _remove(self, verb: Remove, uid: str) -> None:
        view = self._view()
        if view is not None:
            self.keeping.parts = self._parts(view)
            self.keeping.keep()
            self._guard(partial(verb, view.binder, uid))

    def _changed(self, notice: Notice | None) -> None:
        """Another window, or Undo, may have changed what lies on the desk, or what is linked."""
        if not self.isVisible():
            return
        self._guard(self.keeping.look)
        if notice is None or notice.touches("link_rule", "deck"):
            for editor in self.styled:
                editor.recognise()

    def showEvent(self, event: QShowEvent) -> None:
        """What was written elsewhere while the desk was hidden is taken over."""
        super().showEvent(event)
        self._guard(self.keeping.look)

    def _guard(self, verb: Callable[[], None]) -> None:
        try:
            verb()
        except RingboundError as error:
            self._say(str(error), wrong=True)

    def _failed(self, why: str) -> None:
        if why:
            self._say(f"Not saved yet: {why}", wrong=True)
        elif self.said.wrong:
            self._say("")

    def _say(self, sentence: str, *, wrong: bool = False) -> None:
        self.said.say(sentence, wrong=wrong)

    # Card names, links, pictures and menus

    def edit_actions(self) -> list[QAction]:
        """Everything that can be done to the text, for a menu."""
        return write_menu.actions(self.tools, self)

    def _find(self, text: str) -> list[Mention]:
        return list(self.session.linker.find(text, self.spot.leaf if self.spot else ""))

    def _picture(self, uid: str) -> bytes | None:
        from binder.study.leaves.files import kept_anywhere

        found = kept_anywhere(self.session.shelf, uid, self._binder())
        return found.data if found and found.is_picture else None

    def _follow(self, address: str) -> None:
        card, leaf = leads_to(address, Scheme.CARD), leads_to(address, Scheme.LEAF)
        if card:
            self.session.face_card(card)
        elif leaf:
            self.session.face_leaf(leaf)

    def _menu(self, editor: Editor, at: QPoint) -> None:
        write_menu.menu(self.session, self.spot, self.tools, editor).popup(at)

    # Keys

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The tools work on the field that had the keyboard last."""
        if event.type() is QEvent.Type.FocusIn and isinstance(watched, Field):
            self._target = watched
            self.tools.look_at(watched)
        return super().eventFilter(watched, event)

    def event(self, event: QEvent) -> bool:
        """Keys of the tools are theirs while the keyboard is on the desk, whatever they do else;
        another window in front means saving.
        """
        asked = event.type() is QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent)
        if asked and self.tools.claims(cast(QKeyEvent, event)) is not None:
            event.accept()
            return True
        if event.type() is QEvent.Type.WindowDeactivate:
            self.save()
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys of the tools; Escape ends writing."""
        action = self.tools.claims(event)
        if action is not None:
            action.trigger()
        elif event.key() == Qt.Key.Key_Escape:
            self.done.emit()
        else:
            super().keyPressEvent(event)
