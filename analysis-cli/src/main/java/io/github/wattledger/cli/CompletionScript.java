package io.github.wattledger.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import picocli.CommandLine;
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
        Collection<CommandLine> commands = program.subcommands().values();
        String names = String.join(" ", program.subcommands().keySet());
        StringBuilder script = new StringBuilder(HEAD);
        script.append("  if [ \"$COMP_CWORD\" -eq 1 ] && [ \"${word#-}\" = \"$word\" ]; then\n")
                .append("    words='")
                .append(names)
                .append("'\n")
                .append("  else\n")
                .append("    case \"$command\" in\n")
                .append("      ")
                .append(String.join("|", program.subcommands().keySet()))
                .append(") ;;\n")
                .append("      *) command=review ;;\n")
                .append("    esac\n")
                .append("    case \"$command $before\" in\n");
        for (CommandLine command : commands) {
            for (OptionSpec option : command.getCommandSpec().options()) {
                if (option.arity().max() > 0) {
                    script.append("      ")
                            .append(patterns(command.getCommandName(), option))
                            .append(") ")
                            .append(values(option))
                            .append(" ;;\n");
                }
            }
        }
        script.append("      'help '*) words='")
                .append(names)
                .append("' ;;\n")
                .append("      *)\n")
                .append("        case \"$command $word\" in\n");
        for (CommandLine command : commands) {
            script.append("          '")
                    .append(command.getCommandName())
                    .append(" '-*) words='")
                    .append(String.join(" ", optionNames(command.getCommandSpec())))
                    .append("' ;;\n");
        }
        return script.append("          *) kind=files ;;\n")
                .append("        esac ;;\n")
                .append("    esac\n")
                .append("  fi\n")
                .append(TAIL)
                .toString();
    }

    private static String patterns(String command, OptionSpec option) {
        List<String> patterns = new ArrayList<>();
        for (String name : option.names()) {
            patterns.add("'" + command + " " + name + "'");
        }
        return String.join("|", patterns);
    }

    /** What stands behind an option: one of a few words, the beginning of a word, a file, a folder, or what nobody can guess. */
    private static String values(ArgSpec option) {
        if (option.type().isEnum()) {
            return "words='"
                    + String.join(
                            " ", OptionValues.words((Enum<?>[]) option.type().getEnumConstants())) + "'";
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
