"""The pages of services, their items, pieces and people."""
