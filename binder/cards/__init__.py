"""The facts and the language of the 78 cards; no database and no screen."""
