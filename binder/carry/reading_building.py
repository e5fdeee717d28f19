"""A reading of a text shelf -> the leaf of a binder."""

from __future__ import annotations

import mimetypes
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from binder.cards.spreads import spread
from binder.cards.titles import DeckTitles
from binder.carry.texts import DRAWN, LeafText, ReadingText
from binder.carry.uids import uid_for
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.schema import Leaf, Reading
from binder.study import dates
from binder.study.leaves import files, tabs
from binder.study.readings import details, lookbacks, readings
from binder.study.readings.laying import laid_from


class ReadingBuilder:
    """Writes readings into one binder; `source` is the folder of the text shelf."""

    def __init__(
        self, binder: Binder, titles: Mapping[str, DeckTitles], names: Mapping[str, str],
        source: Path,
    ) -> None:  # fmt: skip
        self.binder, self.titles, self.deck_names, self.source = binder, titles, names, source

    def build(self, tab: tabs.TabView, leaf: LeafText, text: ReadingText, body: str) -> None:
        """One reading with all that was stated, written and answered later."""
        made = readings.NewReading(
            at=dates.iso(text.at),
            question=text.question,
            spread=spread(text.spread),
            laid=self._laid(text, leaf.name),
            titles=self.titles[text.deck],
            deck=uid_for(f"deck/{text.deck}"),
            deck_name=self.deck_names[text.deck],
            title=leaf.title,
            text=body,
            topic=text.topic,
            querent="" if text.querent == "self" else text.querent,
            significator=text.significator,
            purpose=text.purpose,
            month=text.period,
            look_on=text.look_on.isoformat() if text.look_on else "",
            mood=text.mood,
            venue=text.venue,
            on_screen=text.on_screen,
            uid=uid_for(leaf.name),
        )
        uid = readings.log(self.binder, tab, made)
        details.show_as(self.binder, uid, text.shown)
        for name in text.photographs:
            details.add_photo(self.binder, uid, readings.Photo(self._photograph(leaf, uid, name)))
        self._judged(uid, text)
        self._answered(uid, text)

    def _laid(self, text: ReadingText, name: str) -> list[readings.Laid]:
        try:
            laid = laid_from(text.cards, spread(text.spread), self.titles[text.deck])
        except CanMend as error:
            raise CanMend(f"{name}.md: {error}") from error
        notes = dict(text.notes)
        return [replace(one, note=notes.pop(one.n, "")) for one in laid]

    def _photograph(self, leaf: LeafText, uid: str, name: str) -> str:
        """The uid of a kept picture: a file beside the leaf, or one drawn here."""
        if name == DRAWN:
            from binder.carry.table_picture import table_png

            data = table_png(readings.reading(self.binder, uid))
            return files.keep_bytes(self.binder, "table.png", "image/png", data)
        path = self.source / Path(leaf.name).parent / name
        media = mimetypes.guess_type(name)[0] or ""
        if Path(name).name != name or media not in files.KEPT_AS_PICTURE:
            raise CanMend(f"{leaf.name}.md: “{name}” names no picture beside this leaf.")
        return files.keep_file(self.binder, path)

    def _judged(self, uid: str, text: ReadingText) -> None:
        stated = [
            lookbacks.expect(self.binder, uid, one.text, one.sure, one.due.isoformat())
            for one in text.expects
        ]
        for back in text.look_backs:
            said = zip(stated, back.verdicts, strict=False)
            verdicts = {one: verdict for one, verdict in said if verdict}
            if not back.text:
                lookbacks.keep_look_back(self.binder, uid, verdicts=verdicts)
                continue
            lookbacks.look_back(self.binder, uid, back.text, card=back.card, at=back.at.isoformat())
            for one, verdict in verdicts.items():
                lookbacks.judge(self.binder, one, verdict)

    def _answered(self, uid: str, text: ReadingText) -> None:
        """How often the look back was put off, and whether it was let go."""
        if text.put_off:
            of = Reading.select(Reading.uid).join(Leaf).where(Leaf.uid == uid)
            with self.binder.change("Ask again later") as change:
                change.edit(Reading, self.binder.value(of), put_off=text.put_off)
        if text.let_go:
            lookbacks.let_go(self.binder, uid)
