"""Plans: what isn't a number. Frozen, and made from calculations."""
