"""What the leaf of a card holds, and where cards are named."""
