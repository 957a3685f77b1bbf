### Lay plans and cloth, as they are published.
