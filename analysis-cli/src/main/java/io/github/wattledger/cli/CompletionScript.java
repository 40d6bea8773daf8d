package io.github.wattledger.cli;

import java.util.List;
import java.util.Set;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * A script by which bash, and zsh with its emulation of bash, completes the program's words.
 *
 * <p>File names are left to the shell itself: what the script offers are words that it splits at blanks, and a file's name
 * may hold blanks.
 */
final class CompletionScript {
    /** The word at the cursor: bash makes words of their own of an equals sign and of what follows it, zsh does not. */
    private static final String HEAD = """
            # Completion of wattledger for bash and zsh: source <(wattledger completion)
            if [ -n "${ZSH_VERSION-}" ]; then
              autoload -U +X compinit && compinit
              autoload -U +X bashcompinit && bashcompinit
            fi
            _wattledger() {
              local word="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}" command="${COMP_WORDS[1]}"
              if [ "$word" = '=' ]; then
                word=''
              elif [ "$before" = '=' ]; then
                before="${COMP_WORDS[COMP_CWORD-2]}"
              fi
              local words='' kind=words prefix=''
              case "$word" in
                --*=*) before="${word%%=*}" prefix="${word%%=*}=" word="${word#*=}" ;;
              esac
            """;

    /** What may stand at the cursor; without a command the ride is for a review. */
    private static final String WORDS = """
              if [ "$COMP_CWORD" -eq 1 ] && [ "${word#-}" = "$word" ]; then
                words='%1$s'
              else
                case "$command" in
                  %2$s) ;;
                  *) command=review ;;
                esac
                case "$command $before" in
            %3$s      'help '*) words='%1$s' ;;
                  *)
                    case "$command $word" in
            %4$s          *) kind=files ;;
                    esac ;;
                esac
              fi
            """;

    /** Without words the shell completes file names by its own rules, unless it is told not to. */
    private static final String TAIL = """
              COMPREPLY=()
              case "$kind" in
                words) COMPREPLY=( $(compgen -P "$prefix" -W "$words" -- "$word") ) ;;
                names) COMPREPLY=( $(compgen -P "$prefix" -W "$words" -- "$word") ); compopt -o nospace 2>/dev/null ;;
                folders) compopt +o default -o dirnames 2>/dev/null ;;
                nothing) compopt +o default 2>/dev/null ;;
              esac
            }
            complete -o default -F _wattledger wattledger
            """;

    private CompletionScript() {}

    /** The script for a program with all its commands. */
    static String of(CommandSpec program) {
        StringBuilder values = new StringBuilder();
        StringBuilder options = new StringBuilder();
        program.subcommands().forEach((name, command) -> {
            for (OptionSpec option : command.getCommandSpec().options()) {
                if (option.arity().max() > 0) {
                    values.append("      '%s %s') %s ;;\n".formatted(name, option.longestName(), values(option)));
                }
            }
            String names = String.join(" ", optionNames(command.getCommandSpec()));
            options.append("          '%s '-*) words='%s' ;;\n".formatted(name, names));
        });
        Set<String> commands = program.subcommands().keySet();
        return HEAD + WORDS.formatted(String.join(" ", commands), String.join("|", commands), values, options) + TAIL;
    }

    /** What stands behind an option: one of a few words, the beginning of a word, a file, a folder, or what nobody can guess. */
    private static String values(ArgSpec option) {
        if (option.type().isEnum()) {
            return "words='"
                    + String.join(
                            " ", OptionWords.words((Enum<?>[]) option.type().getEnumConstants())) + "'";
        }
        if (option.completionCandidates() != null) {
            return "kind=names words='" + String.join(" ", option.completionCandidates()) + "'";
        }
        return switch (option.paramLabel()) {
            case "FILE" -> "kind=files";
            case "FOLDER" -> "kind=folders";
            default -> "kind=nothing";
        };
    }

    private static List<String> optionNames(CommandSpec command) {
        return command.options().stream().map(OptionSpec::longestName).sorted().toList();
    }
}
