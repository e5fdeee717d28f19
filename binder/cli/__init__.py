"""The `ringbound` command: the same verbs as the window, for scripts and for places without one."""

from binder.cli.command_line import main

__all__ = ["main"]
