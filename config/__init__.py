"""The Django project: settings, addresses, who may do what. Nothing of the trade."""
