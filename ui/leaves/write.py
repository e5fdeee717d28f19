"""The writing desk: title and text of a leaf on the paper itself, and the fields of its kind."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QMimeData, QPoint, Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from binder.errors import RingboundError
from binder.page.markdown import LONGEST
from binder.study import lookbacks, readings, sources
from binder.study.kinds import LeafKind
from binder.study.leaves import LeafView
from ui.leaves import rescue, write_menu
from ui.leaves.body_part import BodyPart, State, to_write
from ui.leaves.editor import Editor
from ui.leaves.heads import SectionHead
from ui.leaves.keeping import Keeping, Part
from ui.leaves.long_editor import LongEditor, fit_to_write
from ui.leaves.own_words import OwnWordsFields
from ui.leaves.page import Page
from ui.leaves.pasting import put, put_files, put_plain
from ui.leaves.placed_notes import PlacedNotes
from ui.leaves.sides import SideFields
from ui.leaves.stated import StatedFields
from ui.leaves.tools import ToolRow, Tools
from ui.leaves.write_files import ask_files
from ui.leaves.writing import Writing
from ui.session import Session
from ui.table.field import GrowingField
from ui.table.hints import Hint
from ui.theme import Look
from ui.trail import Spot

NEW_TITLE = "New leaf"
"""The title a new leaf has until the user gives it one."""
LONG = (
    "This leaf is too long for headings and lists to be shown as they will look; everything else "
    "works as ever, and nothing is lost."
)
TOO_LONG_A_LINE = (
    "This leaf holds a word too long to write on here, so it can only be read; paste its text "
    "into shorter leaves to change it."
)
_BODY_HEADS = {LeafKind.CARD: "Notes", LeafKind.READING: "Impressions"}


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
        self.title_said, self.said = Hint(look), Hint(look)
        self.body = Editor(look, "Text of the leaf")
        self.own_body = Editor(look, "Impressions", colour="own")
        self.long = LongEditor(look, "Text of the leaf")
        self.body.setPlaceholderText("Write here")
        self.own_body.setPlaceholderText("What you see, before you look anything up")
        self.own, self.sides = OwnWordsFields(look), SideFields(session, look)
        self.places, self.stated = PlacedNotes(look), StatedFields(look)
        self.keeping = Keeping(self)
        self.part = BodyPart(self, self._say)
        self._target: Writing = self.body
        self.tools = Tools(look, self, lambda: self._target)
        self.row = ToolRow(look, self.tools)
        self.finish = QPushButton("&Done")
        self._lay_out()
        self._connect()

    # Making

    def _lay_out(self) -> None:
        self.sheet = Sheet(self.session, self.look)
        self.sheet.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.body_head = SectionHead(self.look, "Notes")
        self.sheet.add(self.own)
        self.sheet.add(self.sides, gap=10)
        self.sheet.add(self.body_head, self.body, self.own_body, gap=6)
        self.sheet.add(self.places, gap=10)
        self.sheet.add(self.stated, gap=10)
        self.sheet.rows.addStretch(1)
        tools = QHBoxLayout()
        tools.setContentsMargins(0, 0, 0, 0)
        tools.setSpacing(8)
        tools.addWidget(self.row, 1)
        tools.addWidget(self.finish, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for part in (self.title, self.title_said, tools, self.said, self.sheet, self.long):
            column.addLayout(part) if part is tools else column.addWidget(part)
        column.setStretchFactor(self.sheet, 1)
        column.setStretchFactor(self.long, 2)

    def _connect(self) -> None:
        self.finish.clicked.connect(self.done)
        self.title.entered.connect(self._to_text)
        self.title.textChanged.connect(self._title_typed)
        self.said.linkActivated.connect(self._put_back)
        for editor in self.editors:
            editor.edited.connect(self._typed)
            editor.pasted.connect(self._paste)
            editor.installEventFilter(self)
        for editor in self.styled:
            editor.find = self._find
            editor.previews.load = self._picture
            editor.caret_moved.connect(self._caret_moved)
            editor.followed.connect(self._follow)
            editor.menu_asked.connect(self._menu)
        self.long.cursorPositionChanged.connect(lambda: self.tools.look_at(self.long))
        for fields in (self.own, self.sides, self.places, self.stated):
            fields.edited.connect(self._typed)
        self.sides.removed.connect(lambda uid: self._remove(sources.remove_note, uid))
        self.stated.removed.connect(lambda uid: self._remove(lookbacks.remove_expectation, uid))
        actions = self.tools.actions
        for kind in ("card", "leaf", "source"):
            actions[f"link_{kind}"].triggered.connect(lambda _on=False, kind=kind: self.pick(kind))
        actions["picture"].triggered.connect(self.choose_files)
        actions["paste_plain"].triggered.connect(self.paste_plain)
        self.keeping.failed.connect(self._failed)
        self.keeping.said.connect(self.session.said)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_moved)
        self.session.leaving.connect(self.leave)
        self.session.changed.connect(self._changed)

    @property
    def styled(self) -> list[Editor]:
        """The editors with live styles."""
        return [self.body, self.own_body, *self.own.editors]

    @property
    def editors(self) -> list[Writing]:
        """All fields of Markdown."""
        return [*self.styled, self.long]

    # Opening

    def open(self, spot: Spot) -> None:
        """Show the leaf at `spot` to be written on."""
        self.spot = spot
        view = self.session.leaf_of(spot)
        if view is None:
            return
        waiting = self.keeping.take_back(view.uid)
        self._show(view)
        for one in waiting:
            if isinstance(one.state, State):
                self.adopt(one.state)
        self.keeping.open(view.uid, view.title, self._parts(view))
        self._offer(view)
        self.sheet.verticalScrollBar().setValue(0)
        if waiting:
            self.keeping.touch()

    def _show(self, view: LeafView) -> None:
        shown, long = to_write(view.text), len(view.text) > LONGEST
        for part in (self.own, self.sides):
            part.setVisible(view.kind is LeafKind.CARD)
        for part in (self.places, self.stated):
            part.setVisible(view.kind is LeafKind.READING)
        self.body_head.say(_BODY_HEADS.get(view.kind, ""))
        self.body_head.setVisible(view.kind in _BODY_HEADS and not long)
        self.title.start_with(view.title)
        self.long.setVisible(long)
        if long:
            shown, fits = fit_to_write(view.text)
            self.long.setReadOnly(not fits)
            self._say(LONG if fits else TOO_LONG_A_LINE)
        else:
            self._say("")
        self._writes(view.kind, long)
        self._text().open_text(shown)
        self.part.open(view, self._text().markdown())
        self._fill(view)

    def _writes(self, kind: LeafKind, long: bool) -> None:
        """Show the one field for the text that suits the leaf; the others are emptied."""
        own = kind is LeafKind.READING
        self._body: Writing = self.long if long else self.own_body if own else self.body
        self.sheet.setVisible(not long or kind in _BODY_HEADS)
        for editor in (self.body, self.own_body, self.long):
            editor.setVisible(editor is self._body)
            if editor is not self._body:
                editor.open_text("")
        self._target = self._body

    def _text(self) -> Editor | LongEditor:
        return self._body  # type: ignore[return-value]

    def _fill(self, view: LeafView) -> None:
        if view.kind is LeafKind.CARD:
            self.own.open(view)
            self.sides.open(view)
        elif view.kind is LeafKind.READING:
            reading = readings.reading(view.binder, view.uid)
            self.places.open(view, reading)
            self.stated.open(view, reading.expectations, self.session.today)

    def _parts(self, view: LeafView) -> list[Part]:
        return [self.part, *self._fields(view.kind)]

    def _fields(self, kind: LeafKind) -> list[Part]:
        if kind is LeafKind.CARD:
            return [*self.own.parts, *self.sides.parts]
        if kind is LeafKind.READING:
            return [*self.places.parts, *self.stated.parts]
        return []

    def _offer(self, view: LeafView) -> None:
        """Say where words lie that could not be saved the last time."""
        path = rescue.found(view.uid)
        if path is not None:
            self._say(
                "Words of this leaf that could not be saved lie in "
                f"“{path}”. <a href='put'>Put them in at the end</a>"
            )

    def _put_back(self, _address: str) -> None:
        view = self.session.leaf_of(self.spot) if self.spot else None
        path = rescue.found(view.uid) if view else None
        if view is None or path is None:
            return
        words = path.read_text(encoding="utf-8").removeprefix(f"# {view.title}").strip()
        self._text().moveCursor(self._text().textCursor().MoveOperation.End)
        self._text().put_block(words, into=-1)
        if self.save():
            rescue.forget(view.uid)
            self._say("")

    def focus_in(self) -> None:
        """The keyboard where writing begins: a new leaf's title, own words, or the text's end."""
        view = self.session.leaf_of(self.spot) if self.spot else None
        if view is None:
            return
        if self.title.toPlainText() == NEW_TITLE and not view.text:
            self.title.setFocus()
            self.title.selectAll()
        else:
            self._to_text()

    def _to_text(self) -> None:
        view = self.session.leaf_of(self.spot) if self.spot else None
        if view is None:
            return
        first = self.own.editors[0] if view.kind is LeafKind.CARD else self._text()
        first.setFocus(Qt.FocusReason.OtherFocusReason)
        first.moveCursor(first.textCursor().MoveOperation.End)
        if first is not self.long and first.height() > self.sheet.viewport().height():
            first.moveCursor(first.textCursor().MoveOperation.Start)

    def setFocus(self, *_reason: object) -> None:
        """Whoever gives the desk the keyboard means the field to write in."""
        self.focus_in()

    # Fields for BodyPart

    def state(self) -> State:
        """Title and text as they stand."""
        title = " ".join(self.title.toPlainText().split())
        return State(title, self._body.markdown())

    def adopt(self, state: State) -> None:
        """Put in what was written elsewhere."""
        self.title.set_text(state.title)
        if self._body.markdown() != state.text:
            self._body.replace_all(state.text)

    # Saving

    def save(self) -> bool:
        """Save now; False where something could not be saved."""
        return self.spot is None or self.keeping.keep()

    def leave(self) -> None:
        """Another leaf is about to be opened: nothing may be lost."""
        if self.spot is not None:
            self.keeping.leave()

    def _typed(self) -> None:
        self.keeping.parts = self._current_parts()
        self.keeping.touch()

    def _current_parts(self) -> list[Part]:
        """Rows come and go while one writes."""
        view = self.session.leaf_of(self.spot) if self.spot else None
        return self._parts(view) if view else self.keeping.parts

    def _title_typed(self) -> None:
        view_title = self.keeping.title
        missing = not self.title.toPlainText().strip()
        self.title_said.say(
            f"A leaf needs a title; until you write one it keeps “{view_title}”."
            if missing
            else "",
            wrong=True,
        )
        self.keeping.touch()

    def _failed(self, why: str) -> None:
        if why:
            self._say(f"Not saved yet: {why}", wrong=True)
        elif self.said.wrong:
            self._say("")

    def _say(self, sentence: str, *, wrong: bool = False) -> None:
        self.said.say(sentence, wrong=wrong)

    def _remove(self, verb, uid: str) -> None:
        view = self.session.leaf_of(self.spot) if self.spot else None
        if view is None:
            return
        self.keeping.parts = self._parts(view)
        try:
            verb(view.binder, uid)
        except RingboundError as error:
            self._say(str(error), wrong=True)

    def _changed(self, _notice: object) -> None:
        """Another window, or Undo, may have changed what lies on the desk."""
        if self.isVisible():
            self._look()

    def _look(self) -> None:
        try:
            for part in self.keeping.parts:
                look = getattr(part, "look", None)
                if look is not None:
                    look()
        except RingboundError as error:
            self._say(str(error), wrong=True)

    # Tools

    def edit_actions(self) -> list[QAction]:
        """Everything that can be done to the text, for a menu."""
        return write_menu.actions(self.tools, self)

    def undo(self) -> None:
        """Take back the last change in the field written in."""
        self._target.undo()  # type: ignore[attr-defined]

    def redo(self) -> None:
        """Do it again."""
        self._target.redo()  # type: ignore[attr-defined]

    def pick(self, kind: str) -> None:
        """Let the user choose a card, a leaf or a source to link to."""
        from ui.leaves.picker import Picker

        editor = self._target
        picker = Picker(self.session, self.look, kind, self)
        picker.chosen.connect(editor.put_link)
        picker.destroyed.connect(lambda: editor.setFocus())  # type: ignore[attr-defined]
        rect = editor.cursorRect()  # type: ignore[attr-defined]
        at = editor.viewport().mapToGlobal(rect.bottomLeft() + QPoint(0, 4))  # type: ignore[attr-defined]
        picker.open_at(at)
        self.picker = picker

    def choose_files(self) -> None:
        """Ask for pictures and PDFs, and put them in."""
        view = self.session.leaf_of(self.spot) if self.spot else None
        paths = ask_files(self) if view else []
        if view is not None and paths:
            self._report(put_files(self._target, view.binder, paths))

    def paste_plain(self) -> None:
        """Put in the words on the clipboard without anything that dresses them."""
        put_plain(self._target, QApplication.clipboard().mimeData())

    def _paste(self, data: QMimeData) -> None:
        view = self.session.leaf_of(self.spot) if self.spot else None
        editor = self.sender()
        if view is not None and isinstance(editor, Writing):
            self._report(put(editor, view.binder, data))

    def _report(self, amiss: list[str]) -> None:
        if amiss:
            self.session.said.emit(" ".join(amiss))

    # Card names, links and the menu

    def _find(self, text: str) -> list[object]:
        uid = self.spot.leaf if self.spot else ""
        return list(self.session.linker.find(text, uid))

    def _picture(self, uid: str) -> bytes | None:
        from binder.study.files import kept_anywhere

        first = self.session.binder_of(self.spot) if self.spot else None
        found = kept_anywhere(self.session.shelf, uid, first)
        return found.data if found and found.is_picture else None

    def _follow(self, address: str) -> None:
        scheme, _, rest = address.partition(":")
        if scheme == "card":
            self.session.face_card(rest)
        elif scheme == "leaf":
            self.session.face_leaf(rest)

    def _menu(self, at: QPoint) -> None:
        editor = self.sender()
        if isinstance(editor, Editor):
            write_menu.menu(self, editor).popup(at)

    def _caret_moved(self, rect: object) -> None:
        editor = self.sender()
        if isinstance(editor, Editor) and editor.hasFocus():
            self.sheet.show_rect(editor, rect)  # type: ignore[arg-type]
            self.tools.look_at(editor)

    # Keys and focus

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """The tools work on the field that had the keyboard last."""
        if event.type() is QEvent.Type.FocusIn and isinstance(watched, Writing):
            self._target = watched
            self.tools.look_at(watched)
        return super().eventFilter(watched, event)  # type: ignore[arg-type]

    def _focus_moved(self, _before: QWidget | None, now: QWidget | None) -> None:
        """A field that gets the keyboard comes into sight; in an editor the cursor does."""
        if now is not None and not isinstance(now, Editor) and self.sheet.isAncestorOf(now):
            self.sheet.settle()
            self.sheet.ensureWidgetVisible(now, 0, self.look.theme.px(40))

    def event(self, event: QEvent) -> bool:
        """Keys of the tools are theirs while the keyboard is on the desk, whatever they do else;
        another window in front means saving."""
        asked = event.type() is QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent)
        if asked and self.tools.claims(event) is not None:
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

    def showEvent(self, event: QShowEvent) -> None:
        """What was written elsewhere while the desk was hidden is taken over."""
        super().showEvent(event)
        self._look()
