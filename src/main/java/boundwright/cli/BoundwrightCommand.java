package boundwright.cli;

import boundwright.cli.backup.BackupCommand;
import boundwright.cli.backup.CheckDataCommand;
import boundwright.cli.backup.MoveCommand;
import boundwright.cli.backup.RestoreCommand;
import boundwright.cli.installed.LicencesCommand;
import boundwright.cli.installed.RehearseCommand;
import boundwright.cli.person.AthleteCommand;
import boundwright.cli.person.BackCommand;
import boundwright.cli.person.GrowthCommand;
import boundwright.cli.season.SeasonCommand;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * The command {@code boundwright} and what all its commands share. Exit codes: 0 done; 1 an import took nothing, or the data have a fault; 2
 * refused, with the sentence on the error stream; 70 something that boundwright did not expect.
 */
@Command(
    name = "boundwright",
    mixinStandardHelpOptions = true,
    version = "boundwright 0.1.0",
    scope = ScopeType.INHERIT,
    usageHelpAutoWidth = true,
    sortOptions = false,
    description = "Where the tape goes: take-off marks for bounding into sand, learned from real reps.",
    footerHeading = "%n",
    footer = "Everything stays on this machine. Exit codes: 0 done, 1 nothing imported or data at fault, 2 refused, 70 unexpected.")
public final class BoundwrightCommand implements Runnable {
  /** Something that boundwright did not expect. */
  static final int UNEXPECTED = 70;

  /** Refused: the sentence stands on the error stream. */
  static final int REFUSED = 2;

  /** All commands, in the order in which the help shows them. */
  static final List<String> NAMES =
      List.of(
          "marks", "count", "card", "report", "log", "load", "ready", "athlete", "growth", "pain", "hold", "back", "phases",
          "long-jump", "take-offs", "legs", "approach", "full-run", "weather", "chance", "aim", "meet", "clip", "season",
          "session", "import", "export", "backup", "restore", "check-data", "move", "account", "phones", "work", "licences",
          "rehearse", "serve");

  private final Surroundings surroundings;

  @Spec private @Nullable CommandSpec spec;

  @Option(names = "--json", scope = ScopeType.INHERIT, description = "Answer in JSON, lengths in metres.")
  private boolean json;

  @Option(names = "--debug", scope = ScopeType.INHERIT, description = "Show the details of an unexpected error.")
  private boolean debug;

  private BoundwrightCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /**
   * Runs one command.
   *
   * @return the exit code
   */
  public static int run(Surroundings surroundings, String... arguments) {
    BoundwrightCommand top = new BoundwrightCommand(surroundings);
    try {
      Arrays.stream(arguments).forEach(PlainText::checked);
    } catch (RefusedException e) {
      surroundings.err().println(e.getMessage());
      surroundings.err().flush();
      return REFUSED;
    }
    CommandLine line = new CommandLine(top);
    // one command by itself is made in a fraction of the time that all of them take; what lists or suggests commands needs all
    String first = arguments.length == 0 ? "" : arguments[0];
    (NAMES.contains(first) ? List.of(first) : NAMES).forEach(name -> line.addSubcommand(made(name, top)));
    Figures.readBy(line);
    line.setOut(surroundings.out());
    line.setErr(surroundings.err());
    line.setExecutionExceptionHandler(top.calm());
    line.setParameterExceptionHandler(hint());
    int exit = line.execute(arguments);
    surroundings.out().flush();
    surroundings.err().flush();
    return exit;
  }

  private static Object made(String name, BoundwrightCommand top) {
    return switch (name) {
      case "marks" -> new MarksCommand(top);
      case "count" -> new CountCommand(top);
      case "card" -> new CardCommand(top);
      case "report" -> new ReportCommand(top);
      case "log" -> new LogCommand(top);
      case "load" -> new LoadCommand(top);
      case "ready" -> new ReadyCommand(top);
      case "athlete" -> new AthleteCommand(top);
      case "growth" -> new GrowthCommand(top);
      case "pain" -> new PainCommand(top);
      case "hold" -> new HoldCommand(top);
      case "back" -> new BackCommand(top);
      case "phases" -> new PhasesCommand(top);
      case "long-jump" -> new LongJumpCommand(top);
      case "take-offs" -> new TakeOffsCommand(top);
      case "legs" -> new LegsCommand(top);
      case "approach" -> new ApproachCommand(top);
      case "full-run" -> new FullRunCommand(top);
      case "weather" -> new WeatherCommand(top);
      case "chance" -> new ChanceCommand(top);
      case "aim" -> new AimCommand(top);
      case "meet" -> MeetCommand.with(top);
      case "clip" -> ClipCommand.with(top);
      case "season" -> SeasonCommand.with(top);
      case "session" -> SessionCommand.with(top);
      case "import" -> new ImportCommand(top);
      case "export" -> new ExportCommand(top);
      case "backup" -> new BackupCommand(top);
      case "restore" -> new RestoreCommand(top);
      case "check-data" -> new CheckDataCommand(top);
      case "move" -> new MoveCommand(top);
      case "account" -> new AccountCommand(top);
      case "phones" -> new PhonesCommand(top);
      case "work" -> new WorkCommand(top);
      case "licences" -> new LicencesCommand(top);
      case "rehearse" -> new RehearseCommand(top);
      case "serve" -> new ServeCommand(top);
      default -> throw new IllegalArgumentException("no command is called " + name);
    };
  }

  @Override
  public void run() {
    CommandSpec shown = spec;
    if (shown != null) {
      shown.commandLine().usage(surroundings.out());
    }
  }

  /** What the commands touch of the world. */
  public Surroundings surroundings() {
    return surroundings;
  }

  /** Whether the answer is wanted as JSON. */
  public boolean json() {
    return json;
  }

  private IExecutionExceptionHandler calm() {
    return (failure, command, parsed) -> {
      PrintWriter err = surroundings.err();
      if (debug) {
        StringWriter trace = new StringWriter();
        failure.printStackTrace(new PrintWriter(trace));
        err.print(trace);
      }
      if (failure instanceof RefusedException) {
        err.println(failure.getMessage());
        return REFUSED;
      }
      err.println(
          "Something went wrong that boundwright did not expect; reps that were logged before are safe."
              + (debug ? "" : " Run the same command with --debug to see the details."));
      return UNEXPECTED;
    };
  }

  private static IParameterExceptionHandler hint() {
    return (failure, arguments) -> {
      CommandLine command = failure.getCommandLine();
      PrintWriter err = command.getErr();
      err.println(sentence(failure));
      UnmatchedArgumentException.printSuggestions(failure, err);
      err.println("Usage: see " + command.getCommandSpec().qualifiedName(" ") + " --help");
      return REFUSED;
    };
  }

  private static String sentence(ParameterException failure) {
    String message = String.valueOf(failure.getMessage());
    return message.endsWith(".") ? message : message + ".";
  }
}
