"""The owner's decks: titles, faces, photographs."""
