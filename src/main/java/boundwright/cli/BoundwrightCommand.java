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
    CommandLine line =
        new CommandLine(top)
            .addSubcommand(new MarksCommand(top))
            .addSubcommand(new CountCommand(top))
            .addSubcommand(new CardCommand(top))
            .addSubcommand(new ReportCommand(top))
            .addSubcommand(new LogCommand(top))
            .addSubcommand(new LoadCommand(top))
            .addSubcommand(new ReadyCommand(top))
            .addSubcommand(new AthleteCommand(top))
            .addSubcommand(new GrowthCommand(top))
            .addSubcommand(new PainCommand(top))
            .addSubcommand(new HoldCommand(top))
            .addSubcommand(new BackCommand(top))
            .addSubcommand(new PhasesCommand(top))
            .addSubcommand(new LongJumpCommand(top))
            .addSubcommand(new TakeOffsCommand(top))
            .addSubcommand(new LegsCommand(top))
            .addSubcommand(new ApproachCommand(top))
            .addSubcommand(new FullRunCommand(top))
            .addSubcommand(new WeatherCommand(top))
            .addSubcommand(new ChanceCommand(top))
            .addSubcommand(new AimCommand(top))
            .addSubcommand(MeetCommand.with(top))
            .addSubcommand(ClipCommand.with(top))
            .addSubcommand(SeasonCommand.with(top))
            .addSubcommand(SessionCommand.with(top))
            .addSubcommand(new ImportCommand(top))
            .addSubcommand(new ExportCommand(top))
            .addSubcommand(new BackupCommand(top))
            .addSubcommand(new RestoreCommand(top))
            .addSubcommand(new CheckDataCommand(top))
            .addSubcommand(new MoveCommand(top))
            .addSubcommand(new AccountCommand(top))
            .addSubcommand(new PhonesCommand(top))
            .addSubcommand(new WorkCommand(top))
            .addSubcommand(new LicencesCommand(top))
            .addSubcommand(new RehearseCommand(top))
            .addSubcommand(new ServeCommand(top));
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
