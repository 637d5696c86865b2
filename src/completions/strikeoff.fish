# SPDX-License-Identifier: MIT
# Completion of strikeoff for fish. A test compares it with the program's own options.
set -l commands plan check draw odds resume why new list schema
complete -c strikeoff -f
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a plan -d "the plan of a job"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a check -d "problems and checks"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a draw -d "drawings, as SVG files"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a odds -d "how often it goes wrong"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a resume -d "the rest of a pour"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a why -d "how a number came about"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a new -d "a starter job"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a list -d "the shipped goods"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -a schema -d "a JSON Schema"
complete -c strikeoff -n "not __fish_seen_subcommand_from $commands" -l version -d "the version"
complete -c strikeoff -s h -l help -d "help"
complete -c strikeoff -n "__fish_seen_subcommand_from plan check draw odds resume why" -F
complete -c strikeoff -n "__fish_seen_subcommand_from plan" -l format -x -a "text json html csv ics"
complete -c strikeoff -n "__fish_seen_subcommand_from odds resume why" -l format -x -a "text json"
complete -c strikeoff -n "__fish_seen_subcommand_from plan" -l table -x -a "parts boards materials batches schedule"
complete -c strikeoff -n "__fish_seen_subcommand_from plan" -s o -l output -r -F -d "where to"
complete -c strikeoff -n "__fish_seen_subcommand_from draw" -s o -l output -x -a "(__fish_complete_directories)" -d "the directory"
complete -c strikeoff -n "__fish_seen_subcommand_from plan check draw odds" -s q -l quiet -d "only what was asked"
complete -c strikeoff -n "__fish_seen_subcommand_from plan check draw odds resume why" -l diagnostics -x -a "text json"
complete -c strikeoff -n "__fish_seen_subcommand_from plan check odds resume why list" -l color -x -a "auto always never"
complete -c strikeoff -n "__fish_seen_subcommand_from plan check odds resume why list" -l width -x
complete -c strikeoff -n "__fish_seen_subcommand_from odds" -l runs -x
complete -c strikeoff -n "__fish_seen_subcommand_from odds" -l seed -x
complete -c strikeoff -n "__fish_seen_subcommand_from odds" -l threads -x
complete -c strikeoff -n "__fish_seen_subcommand_from odds" -l risk -x
complete -c strikeoff -n "__fish_seen_subcommand_from list" -a "mixes boards panels additives sealers supplies"
complete -c strikeoff -n "__fish_seen_subcommand_from schema" -a "job plan log"
