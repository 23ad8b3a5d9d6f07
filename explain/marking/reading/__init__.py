"""Reading what people hand in, safely: its lines and parts, numbers and units by their spelling. Judges nothing."""

from .numbers import comma_in
from .working import WorkingLine, read_working

__all__ = ("WorkingLine", "comma_in", "read_working")
