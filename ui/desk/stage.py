"""What may be laid over the read leaves for a while."""

from enum import StrEnum


class Stage(StrEnum):
    """What lies on the binder, or beside the shelf in its place."""

    LEAVES = ""
    """Nothing: the leaves are read."""
    WRITE = "write"
    ENTRY = "entry"
    LOOK_BACK = "look back"
    RECALL = "recall"
    HANDBOOK = "handbook"
    WELCOME = "welcome"
    FILE = "file"
    PRINT = "print"
    """Sheets, or another screen as large as the binder, in the binder's place."""


APART = (Stage.ENTRY, Stage.RECALL, Stage.HANDBOOK)
"""Stages that have nothing to do with the leaf that lies below."""
WRITTEN = (Stage.WRITE, Stage.ENTRY, Stage.RECALL)
"""Stages that are not filled again when a binder changes: somebody is at work on them."""
