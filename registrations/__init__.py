"""How it is played on that organ."""
