# SPDX-License-Identifier: MIT
# Completion of strikeoff for bash. A test compares it with the program's own options.
_strikeoff() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command=${COMP_WORDS[1]}
  local shared="--diagnostics --color --width --help" options="" words=""
  if ((COMP_CWORD == 1)); then
    words="plan check draw odds resume why new list schema --help --version"
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word")
    return
  fi
  case $before in
    --format)
      words="text json"
      [[ $command != plan ]] || words="text json html csv ics"
      ;;
    --table) words="parts boards materials batches schedule" ;;
    --diagnostics) words="text json" ;;
    --color) words="auto always never" ;;
    --width | --runs | --seed | --threads | --risk) return ;;
    -o | --output)
      if [[ $command == draw ]]; then
        mapfile -t COMPREPLY < <(compgen -d -- "$word")
      else
        mapfile -t COMPREPLY < <(compgen -f -- "$word")
      fi
      compopt -o filenames 2>/dev/null
      return
      ;;
    list) words="mixes boards panels additives sealers supplies" ;;
    schema) words="job plan log" ;;
  esac
  if [[ -n $words && $word != -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word")
    return
  fi
  case $command in
    plan) options="--format --table --output -o --quiet -q $shared" ;;
    check) options="--quiet -q $shared" ;;
    draw) options="--output -o --quiet -q --diagnostics --help" ;;
    odds) options="--runs --seed --threads --risk --format --quiet -q $shared" ;;
    resume) options="--format $shared" ;;
    why) options="--format $shared" ;;
    new) options="--help" ;;
    list) options="--color --width --help" ;;
    schema) options="--help" ;;
    *) return ;;
  esac
  if [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word")
  elif [[ $command == @(plan|check|draw|odds|resume|why) ]]; then
    mapfile -t COMPREPLY < <(compgen -f -- "$word")
    compopt -o filenames 2>/dev/null
  fi
}
complete -F _strikeoff strikeoff
