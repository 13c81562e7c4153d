"""Which version of the tool is this?"""

VERSION = "0.2.0"
