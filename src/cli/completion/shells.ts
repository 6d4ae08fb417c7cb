/** The command that prints a script. */
export const COMPLETION = 'completion';
/** What the scripts ask behind `mendline`, with the shell and what is typed. */
export const ASK = '--complete';

const BASH = `# mendline's completion for bash 4 or newer. In ~/.bashrc: eval "$(mendline completion bash)"
_mendline() {
  local -a answer
  mapfile -t answer < <(mendline ${ASK} bash "\${COMP_LINE:0:COMP_POINT}" 2>/dev/null)
  COMPREPLY=("\${answer[@]:1}")
  case "\${answer[0]}" in
    files) compopt -o default ;;
    names) compopt -o filenames ;; # so that bash puts quotes or backslashes where a name needs them
  esac
}
complete -F _mendline mendline
`;

const ZSH = `#compdef mendline
# mendline's completion for zsh. In ~/.zshrc: eval "$(mendline completion zsh)"
_mendline() {
  local -a answer
  answer=("\${(@f)$(mendline ${ASK} zsh "\${(@Q)words[2,CURRENT-1]}" "\${(Q)PREFIX}" 2>/dev/null)}")
  case "\${answer[1]}" in
    files) _files ;;
    names) compadd -- "\${(@)answer[2,-1]}" ;;
  esac
}
(( \${+functions[compdef]} )) || { autoload -Uz compinit && compinit }
compdef _mendline mendline
`;

/** The script of each shell. */
export const SHELLS: Readonly<Record<string, string>> = { bash: BASH, zsh: ZSH };
