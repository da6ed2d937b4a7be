"""The demo parish: a church, its organs, people and services, all invented; the music is real."""
