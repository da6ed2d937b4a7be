"""The pages of the organs: reading them, and changing them."""
