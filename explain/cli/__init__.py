"""The command line, one module a command. Knows options, files and exit codes; imported by nothing."""
