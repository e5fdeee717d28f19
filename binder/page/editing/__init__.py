"""The editor's verbs on Markdown text."""
