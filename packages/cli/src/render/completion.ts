// The few lines that teach a shell to ask the program what can come next. What it answers: options/candidates.ts.

export const shells = ["bash", "zsh", "fish", "powershell"] as const;
export type Shell = (typeof shells)[number];

/** The script of a shell, and how to have it at every start. */
export const completionScript = (shell: Shell): string => scripts[shell];

// Every word is handed over as typed; each line that comes back is a word, a tab, and what it means.
const scripts: Readonly<Record<Shell, string>> = {
  bash: `# sealtrend: completion for bash. To have it always, add this line to ~/.bashrc:
#   source <(sealtrend completion bash)
_sealtrend() {
  # bash takes --gauge=red for three words, and gives each with the quotes and backslashes that were typed
  local -a typed=()
  local word line joins=
  for word in "\${COMP_WORDS[@]:1:COMP_CWORD}"; do
    line=\${word//[\\\\\\"\\']/}
    if [[ $line == = && \${#typed[@]} -gt 0 && \${typed[\${#typed[@]}-1]} == --* ]]; then
      typed[\${#typed[@]}-1]+='='
      joins=yes
    elif [[ -n $joins ]]; then
      typed[\${#typed[@]}-1]+=$line
      joins=
    else
      typed+=("$line")
    fi
  done
  local begun=
  [[ \${#typed[@]} -gt 0 ]] && begun=\${typed[\${#typed[@]}-1]}
  COMPREPLY=()
  while IFS= read -r line; do
    line=\${line%%$'\\t'*}
    [[ $begun == --*=* ]] && line=\${line#"\${begun%%=*}="}
    case $word in
      [\\"\\']*) COMPREPLY+=("$line") ;;
      *) COMPREPLY+=("$(printf '%q' "$line")") ;;
    esac
  done < <(sealtrend completion --line -- "\${typed[@]}" 2>/dev/null)
}
complete -o default -F _sealtrend sealtrend
`,
  zsh: `#compdef sealtrend
# sealtrend: completion for zsh. To have it always, add these lines to ~/.zshrc:
#   autoload -Uz compinit && compinit
#   source <(sealtrend completion zsh)
_sealtrend() {
  local -a described
  local line word
  for line in "\${(@f)$(sealtrend completion --line -- "\${(@Q)words[2,CURRENT-1]}" "\${(Q)PREFIX}" 2>/dev/null)}"; do
    [[ -n $line ]] || continue
    word=\${\${line%%$'\\t'*}//:/\\\\:}
    if [[ $line == *$'\\t'* ]]; then described+=("$word:\${line#*$'\\t'}"); else described+=("$word"); fi
  done
  if (( \${#described} )); then _describe 'sealtrend' described; else _files; fi
}
compdef _sealtrend sealtrend
`,
  fish: `# sealtrend: completion for fish. To have it always:
#   sealtrend completion fish > ~/.config/fish/completions/sealtrend.fish
function __sealtrend_next
    set -l typed (commandline -opc) (commandline -ct | string replace -ra '[\\\\\\\\"\\']' '')
    set -l found (sealtrend completion --line -- $typed[2..-1] 2>/dev/null)
    if test (count $found) -gt 0
        printf '%s\\n' $found
    else
        __fish_complete_path (commandline -ct)
    end
end
complete -c sealtrend -f -a '(__sealtrend_next)'
`,
  powershell: `# sealtrend: completion for PowerShell. To have it always, add this line to your $PROFILE:
#   sealtrend completion powershell | Out-String | Invoke-Expression
Register-ArgumentCompleter -Native -CommandName sealtrend -ScriptBlock {
    param($begun, $line, $at)
    $typed = @($line.CommandElements | Select-Object -Skip 1 | Where-Object { $_.Extent.StartOffset -lt $at } | ForEach-Object { "$_" })
    if ($begun -eq '') { $typed += ' ' }
    sealtrend completion --line '--' @typed 2>$null | ForEach-Object {
        $word, $about = $_ -split "\`t", 2
        if (-not $about) { $about = $word }
        [System.Management.Automation.CompletionResult]::new($word, $word, 'ParameterValue', $about)
    }
}
`,
};
