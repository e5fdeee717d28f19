"""One file is one binder: schema, opening, the gate of change, search, shelf."""
