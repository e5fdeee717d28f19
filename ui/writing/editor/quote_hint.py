"""Says when somebody else's words stand in a text without their source."""

from __future__ import annotations

from collections.abc import Iterable

from binder.page.editing.quoting import unsourced
from ui.kit.forms.hints import Hint
from ui.kit.quoted import quoted
from ui.writing.editor.writing import Writing

SAYING = (
    "{} has no source yet; put the cursor in it and press Ctrl+Shift+G to say whose words "
    "these are."
)
LONGEST = 40
"""Letters of a quotation that are shown."""


class QuoteHint(Hint):
    """A quiet sentence; nothing is refused, since the source may be looked up later."""

    def look(self, fields: Iterable[Writing]) -> None:
        """Look at what stands in these fields now."""
        bare = [quote for field in fields for quote in unsourced(field.text())]
        words = " ".join(bare[0].replace(">", " ").split()) if bare else ""
        short = words if len(words) <= LONGEST else f"{words[:LONGEST].rstrip()}…"
        said = SAYING.format(quoted(short)) if bare else ""
        if said != self.text():
            self.say(said)
