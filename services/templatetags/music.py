from django import template

from services.tonality import key_words

register = template.Library()


@register.filter
def key_typeset(key: str) -> str:
    return key_words(key)
