package handreach.cli;

import handreach.input.FileName;
import handreach.input.InputFault;
import handreach.input.NearestWord;
import handreach.input.NumberText;
import handreach.input.Unseen;
import handreach.propagation.NoAnswer;
import handreach.report.page.PlainText;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.UsageMessageSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Runs one command and turns every way of failing into its exit code and its one line. */
public final class CommandLineRunner {
    private static final int DONE = 0;
    private static final int FAILED = 1;
    private static final int INPUT_WRONG = 2;
    /** Columns into which any synopsis goes whole. */
    private static final int ONE_LINE = 10_000;
    /** In the order help lists them. */
    private static final List<String> COMMANDS = List.of(
            "bench", "match", "pattern", "tiles", "plan", "path", "reach", "assign", "relay", "atlas", "walk", "card",
            "report", "desk");

    private static final String HELP = "help";
    /** What people try on the command line for a key of the plan. */
    private static final List<String> UNITS = List.of("--imperial", "--metric", "--units");

    /** How picocli speaks of a word that is none of those allowed; as a pattern only when a word was wrong. */
    private static final String ENUM_WORDS = "expected one of \\[(.*)\\] \\(case-insensitive\\) but was '(.*)'";

    private CommandLineRunner() {}

    /** Runs the command in the arguments; {@code window} opens the window on a plan and returns when it is closed. */
    public static int run(String[] words, PrintStream out, PrintStream err, Consumer<Optional<Path>> window) {
        String[] args = asked(words);
        PrintWriter outWriter = new PrintWriter(out, true, StandardCharsets.UTF_8);
        PrintWriter errWriter = new PrintWriter(err, true, StandardCharsets.UTF_8);
        try (StopNotice stop = StopNotice.on(errWriter)) {
            return run(args, outWriter, errWriter, window, stop);
        }
    }

    private static int run(
            String[] args,
            PrintWriter outWriter,
            PrintWriter errWriter,
            Consumer<Optional<Path>> window,
            StopNotice stop) {
        CommandLine line = commands(args, window)
                .setOut(outWriter)
                .setErr(errWriter)
                .setUsageHelpWidth(100)
                .setUsageHelpLongOptionsMaxWidth(34)
                .setAbbreviatedOptionsAllowed(false)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler(CommandLineRunner::wrongUsage)
                .setExecutionExceptionHandler((thrown, command, parsed) -> failed(thrown, errWriter, stop));
        // Each reference is linked at first use, so each converter is referred to once.
        ITypeConverter<Double> number = CommandLineRunner::number;
        ITypeConverter<Integer> count = CommandLineRunner::count;
        line.registerConverter(Path.class, CommandLineRunner::path);
        line.registerConverter(Double.class, number);
        line.registerConverter(double.class, number);
        line.registerConverter(Integer.class, count);
        line.registerConverter(int.class, count);
        layOutHelp(line);
        if (args.length == 0) {
            line.usage(outWriter);
            return INPUT_WRONG;
        }
        int code = executed(line, args, errWriter, stop);
        boolean isLost = outWriter.checkError();
        if (isLost)
            errWriter.println(
                    "The answer could not be written whole to standard output: the disk is full, or whoever read it"
                            + " has gone.");
        errWriter.flush();
        return isLost && code == DONE ? FAILED : code;
    }

    /** Who types {@code help}, or {@code help reach}, gets what {@code --help} shows. */
    private static String[] asked(String[] words) {
        if (words.length == 0 || !words[0].equals(HELP)) return words;
        return words.length > 1 && COMMANDS.contains(words[1])
                ? new String[] {words[1], "--" + HELP}
                : new String[] {"--" + HELP};
    }

    /** Worked examples stand in the footers, and one that is wrapped cannot be copied; what is typed is parted at blanks alone. */
    private static void layOutHelp(CommandLine line) {
        line.getHelpSectionMap().put(UsageMessageSpec.SECTION_KEY_SYNOPSIS, CommandLineRunner::synopsis);
        line.getHelpSectionMap()
                .put(
                        UsageMessageSpec.SECTION_KEY_FOOTER,
                        help -> String.join(
                                        System.lineSeparator(),
                                        help.commandSpec().usageMessage().footer())
                                + System.lineSeparator());
        for (CommandLine each : line.getSubcommands().values()) layOutHelp(each);
    }

    private static String synopsis(CommandLine.Help help) {
        UsageMessageSpec usage = help.commandSpec().usageMessage();
        int width = usage.width();
        usage.width(ONE_LINE);
        String words = help.synopsis(0).strip();
        usage.width(width);
        String heading = "Usage: ";
        String command = heading + help.commandSpec().qualifiedName() + " ";
        return PlainText.of(command, words.substring(command.length() - heading.length()), width)
                .substring(heading.length());
    }

    /**
     * The command asked for. Where the words name none, help lists all by what they say of themselves: building one with its
     * options takes a cold start some 15 ms.
     */
    private static CommandLine commands(String[] args, Consumer<Optional<Path>> window) {
        CommandLine line = new CommandLine(new HandreachCommand());
        boolean isNamed = args.length > 0 && COMMANDS.contains(args[0]);
        boolean isListed = true;
        for (String word : args) if (COMMANDS.contains(word)) isListed = false;
        for (String name : isNamed ? List.of(args[0]) : COMMANDS) {
            Object command = command(name, window);
            if (isListed) line.addSubcommand(name, listed(command.getClass()));
            else line.addSubcommand(name, command);
        }
        return line;
    }

    /** A command by its description alone. */
    private static CommandSpec listed(Class<?> command) {
        CommandSpec spec = CommandSpec.create();
        spec.usageMessage().description(command.getAnnotation(Command.class).description());
        return spec;
    }

    private static Object command(String name, Consumer<Optional<Path>> window) {
        return switch (name) {
            case "bench" -> new BenchCommand();
            case "match" -> new MatchCommand();
            case "pattern" -> new PatternCommand();
            case "tiles" -> new TilesCommand();
            case "plan" -> new PlanCommand();
            case "path" -> new PathCommand();
            case "reach" -> new ReachCommand();
            case "assign" -> new AssignCommand();
            case "relay" -> new RelayCommand();
            case "atlas" -> new AtlasCommand();
            case "walk" -> new WalkCommand();
            case "card" -> new CardCommand();
            case "report" -> new ReportCommand();
            case "desk" -> new DeskCommand(window);
            default -> throw new IllegalArgumentException("no command " + name);
        };
    }

    private static Path path(String written) {
        try {
            return FileName.of(written);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException("\"" + written + "\" " + e.getMessage());
        }
    }

    /** A number as files have it; picocli's own words would name a type of the language. */
    private static Double number(String written) {
        if (NumberText.hasDecimalComma(written))
            throw new TypeConversionException(
                    "\"" + written + "\" has a comma, a number with a point is expected: " + written.replace(',', '.'));
        try {
            return Double.valueOf(written.strip().replace('\u2212', '-'));
        } catch (NumberFormatException e) {
            throw new TypeConversionException("\"" + written + "\" is not a number");
        }
    }

    private static Integer count(String written) {
        try {
            return Integer.valueOf(written.strip());
        } catch (NumberFormatException e) {
            throw new TypeConversionException("\"" + written + "\" is not a whole number");
        }
    }

    private static int wrongUsage(ParameterException wrong, String[] args) {
        PrintWriter err = wrong.getCommandLine().getErr();
        String command = wrong.getCommandLine().getCommandSpec().qualifiedName();
        String said = Pattern.compile(ENUM_WORDS)
                .matcher(unexpected(wrong).orElse(String.valueOf(wrong.getMessage())))
                .replaceFirst(found -> "\"" + Matcher.quoteReplacement(found.group(2)) + "\", allowed is "
                        + found.group(1).toLowerCase(Locale.ROOT));
        err.println(Unseen.oneLine(command + ": " + said + hint(wrong) + " See " + command + " --help."));
        return INPUT_WRONG;
    }

    /** Words that no command and no argument is waiting for. */
    private static Optional<String> unexpected(ParameterException wrong) {
        if (!(wrong instanceof UnmatchedArgumentException unmatched)
                || unmatched.getUnmatched().stream().anyMatch(word -> word.startsWith("-"))) return Optional.empty();
        List<String> words = unmatched.getUnmatched();
        if (wrong.getCommandLine().getParent() == null)
            return Optional.of("there is no command \"" + words.get(0) + "\"");
        return Optional.of("\"" + String.join("\", \"", words) + "\""
                + (words.size() == 1 ? " is one word" : " are words") + " too many");
    }

    private static String hint(ParameterException wrong) {
        String stop = String.valueOf(wrong.getMessage()).endsWith(".") ? "" : ".";
        if (!(wrong instanceof UnmatchedArgumentException unmatched)) return stop;
        String word = unmatched.getUnmatched().get(0);
        String name = word.indexOf('=') < 0 ? word : word.substring(0, word.indexOf('='));
        if (UNITS.contains(name)) return stop + " Units are set in the plan: units = \"imperial\" at its top.";
        CommandLine line = wrong.getCommandLine();
        if (name.startsWith("-")) return stop + near(name, line);
        return line.getParent() == null
                ? stop + NearestWord.hint(word, COMMANDS)
                : stop + " Put a name with blanks in quotes.";
    }

    /** The option that goes on where the typed one ends, such as {@code --radius-km}, else the nearest. */
    private static String near(String typed, CommandLine line) {
        List<String> options = line.getCommandSpec().options().stream()
                .flatMap(option -> Stream.of(option.names()))
                .toList();
        return options.stream()
                .filter(option -> option.startsWith(typed + "-"))
                .findFirst()
                .map(option -> " Did you mean " + option + "?")
                .orElseGet(() -> NearestWord.hint(typed, options));
    }

    private static int executed(CommandLine line, String[] args, PrintWriter err, StopNotice stop) {
        try {
            return line.execute(args);
        } catch (Error beyond) {
            return failed(beyond, err, stop);
        }
    }

    private static int failed(Throwable thrown, PrintWriter err, StopNotice stop) {
        if (thrown instanceof CancellationException || stop.isEnding()) {
            stop.tell();
            return FAILED;
        }
        if (thrown instanceof InputFault fault) {
            fault.faults().forEach(each -> err.println(each.message()));
            return INPUT_WRONG;
        }
        Throwable cause = thrown;
        while (cause instanceof UncheckedIOException
                || cause instanceof CompletionException && cause.getCause() != null) cause = cause.getCause();
        if (cause instanceof NoAnswer) {
            err.println(Unseen.oneLine("The model has no answer: " + cause.getMessage()));
            return INPUT_WRONG;
        }
        if (cause instanceof OutOfMemoryError) {
            err.println(
                    "The memory given to the program, " + Runtime.getRuntime().maxMemory() / 1_000_000
                            + " MB, was not enough. Nothing is half written. Take a smaller radius_km or a larger cell_m, or give it more"
                            + " with java -Xmx4g -jar handreach.jar.");
            return FAILED;
        }
        if (cause instanceof FileSystemException file) {
            String reason = file.getReason() == null ? file.getClass().getSimpleName() : file.getReason();
            err.println(Unseen.oneLine(file.getFile() + ": could not be read or written (" + reason
                    + "). Check the name, the rights and free space."));
            return FAILED;
        }
        if (System.getProperty("handreach.trace") != null) thrown.printStackTrace(err);
        String said = cause.getMessage() == null ? "" : " (" + cause.getMessage() + ")";
        err.println(Unseen.oneLine("A defect of the program, not of your input: "
                + cause.getClass().getSimpleName() + said
                + ". Please report it with the command you gave, the plan or file, and the version, "
                + ProgramVersion.text() + "; -Dhandreach.trace shows where."));
        return FAILED;
    }
}
