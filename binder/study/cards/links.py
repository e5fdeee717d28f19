"""Card names in prose: which are linked, and the user's own choices about that."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.cards.titles import STANDARD
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.schema import Leaf, LinkRule
from binder.store.shelf import Shelf
from binder.study.decks.decks import decks
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import leaf, write

if TYPE_CHECKING:
    from binder.cards.prose import Lexicon, Mention

NEVER, ALWAYS = "never", "always"


class Linker:
    """Finds card names in running text for one shelf, by its decks' titles and the user's rules.

    `refresh` reads decks and rules again; do so when either changed.
    """

    def __init__(self, shelf: Shelf) -> None:
        self._shelf = shelf
        self.refresh()

    def refresh(self) -> None:
        """Read the decks and the rules of all binders."""
        titles = list({deck.titles: None for deck in decks(self._shelf, retired=True)}) or [
            STANDARD
        ]
        self._titles = tuple(titles if STANDARD in titles else [STANDARD, *titles])
        self._rules: dict[str, list[tuple[str, str]]] = {}
        for _, row in self._shelf.each(LinkRule.select()):
            self._rules.setdefault(row.leaf, []).append((row.word, row.rule))
        self._lexicons: dict[tuple[str, bool], Lexicon] = {}
        self._of_cards: dict[str, bool] = {}

    def lexicon(self, leaf_uid: str = "") -> Lexicon:
        """The lexicon for one leaf: the shelf's rules and the leaf's own."""
        from binder.cards.prose import Lexicon  # its patterns take a while to compile

        key = leaf_uid if leaf_uid in self._rules else ""
        which = (key, self._is_of_cards(leaf_uid))
        if which not in self._lexicons:
            rules = self._rules.get("", []) + (self._rules[key] if key else [])
            self._lexicons[which] = Lexicon(
                self._titles,
                banned=frozenset(word for word, rule in rules if rule == NEVER),
                chosen=frozenset(word for word, rule in rules if rule == ALWAYS),
                of_cards=which[1],
            )
        return self._lexicons[which]

    def _is_of_cards(self, leaf_uid: str) -> bool:
        """Whether a leaf is about cards before a word is read: a card's own, or a reading."""
        known = self._of_cards.get(leaf_uid)
        if known is not None:
            return known
        home = self._shelf.home_of(leaf_uid) if leaf_uid else None
        kind = home.value(Leaf.select(Leaf.kind).where(Leaf.uid == leaf_uid)) if home else ""
        found = kind in (LeafKind.CARD, LeafKind.READING)
        if home is not None:  # a leaf never becomes another kind; one in a drawer may come back
            self._of_cards[leaf_uid] = found
        return found

    def find(self, text: str, leaf_uid: str = "") -> list[Mention]:
        """Card names in `text`, as they are linked on that leaf."""
        from binder.cards.prose import find

        return find(text, self.lexicon(leaf_uid))


def set_rule(binder: Binder, word: str, rule: str, *, leaf_uid: str = "") -> None:
    """Never, or always, link `word`: on one leaf, or everywhere when `leaf_uid` is ''."""
    folded = " ".join(word.casefold().split()).removeprefix("the ")
    same = (LinkRule.word == folded) & (LinkRule.leaf == leaf_uid)
    with binder.change("Choose what is linked") as change:
        for row in binder.all(LinkRule.select(LinkRule.uid).where(same)):
            change.remove(LinkRule, row.uid)
        change.add(LinkRule, leaf=leaf_uid, word=folded, rule=rule)


def leave_alone(binder: Binder, leaf_uid: str, key: str, nth: int, linker: Linker) -> None:
    """Unlink one card name: the one that follows `nth` others of that card in the leaf's text.

    An invisible mark before the name says so, and goes wherever the text goes.
    """
    from binder.cards.prose import LEFT_ALONE

    view = leaf(binder, leaf_uid)
    named = [one for one in linker.find(view.text, leaf_uid) if one.key == key]
    if nth >= len(named):
        raise CanMend("That name was changed meanwhile; look at the leaf again.")
    at = named[nth].start
    text = view.text[:at] + LEFT_ALONE + view.text[at:]
    write(binder, leaf_uid, title=view.title, text=text, seen=view.changed)


def rules(shelf: Shelf) -> list[tuple[Binder, str, str, str, str]]:
    """All rules: binder, rule's uid, leaf uid ('' everywhere), word, never or always."""
    return [
        (binder, row.uid, row.leaf, row.word, row.rule)
        for binder, row in shelf.each(LinkRule.select().order_by(LinkRule.word))
    ]


def forget_rule(binder: Binder, uid: str) -> None:
    """Take a rule back."""
    with binder.change("Forget a choice about links") as change:
        change.remove(LinkRule, uid)
