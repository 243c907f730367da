"""donorbill: parts list and compatibility check for a motorcycle turned battery-electric."""

__version__ = "0.1.0"
