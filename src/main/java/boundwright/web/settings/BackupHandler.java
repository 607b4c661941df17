package boundwright.web.settings;

import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.backup.BackupDesk;
import boundwright.store.backup.Kept;
import boundwright.store.backup.Rotation;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.random.RandomGenerator;

/** Backups: when the last one was made, one button for another, and one that leaves the machine. */
public final class BackupHandler {
  private static final DateTimeFormatter AT = DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm", Locale.ENGLISH);

  private final BackupDesk desk;
  private final Pages pages;
  private final RandomGenerator random;

  /** @param random must be one that cannot be guessed */
  public BackupHandler(Workbench bench, Pages pages, RandomGenerator random) {
    this.desk = bench.backups();
    this.pages = pages;
    this.random = random;
  }

  /** The page. */
  public void show(Context ctx) {
    page(ctx, 200, "", switch (Form.text(ctx, "done")) {
      case "now" -> "A backup was made and looked through.";
      case "set" -> "The settings are kept.";
      default -> "";
    });
  }

  /** Makes one now. */
  public void now(Context ctx) {
    try {
      desk.now();
      ctx.redirect("/settings/backup?done=now", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, 422, String.valueOf(e.getMessage()), "");
    }
  }

  /** Sends one that leaves the machine, sealed. */
  public void away(Context ctx) throws IOException {
    char[] passphrase = Form.text(ctx, "passphrase").toCharArray();
    try {
      BackupDesk.checkedPassphrase(passphrase);
      if (!Form.text(ctx, "again").equals(new String(passphrase))) {
        throw new RefusedException("The two passphrases differ, so no backup was made. Type both again.");
      }
    } catch (RefusedException e) {
      page(ctx, 422, String.valueOf(e.getMessage()), "");
      return;
    }
    ctx.contentType("application/octet-stream");
    ctx.header("Content-Disposition", "attachment; filename=\"" + desk.name(true) + "\"");
    desk.sealed(ctx.outputStream(), passphrase, Form.text(ctx, "films").equals("yes"), random);
  }

  /** How many stay, and whether films go along. */
  public void keep(Context ctx) {
    try {
      desk.settings().keep(
          new Rotation(
              Form.whole("number of days", Form.text(ctx, "days")),
              Form.whole("number of weeks", Form.text(ctx, "weeks")),
              Form.whole("number of months", Form.text(ctx, "months"))),
          Form.text(ctx, "films").equals("yes"));
      ctx.redirect("/settings/backup?done=set", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, 422, String.valueOf(e.getMessage()), "");
    }
  }

  /** The coach has read what was lost. */
  public void seen(Context ctx) throws IOException {
    desk.seen();
    ctx.redirect("/settings/backup", HttpStatus.SEE_OTHER);
  }

  private void page(Context ctx, int status, String refused, String said) {
    List<Kept> all = desk.backups().all();
    Rotation r = desk.settings().rotation();
    pages.show(
        ctx,
        status,
        "settings/backup",
        "Backup",
        "settings",
        new BackupView(
            all.isEmpty() ? "none yet" : line(all.get(0)),
            desk.settings().left().map(Figures::dayOfYear).orElse("never"),
            desk.trouble(),
            desk.lost(),
            all.stream().map(BackupHandler::line).toList(),
            desk.backups().folder().toString(),
            desk.settings().films(),
            Map.of("days", String.valueOf(r.days()), "weeks", String.valueOf(r.weeks()), "months", String.valueOf(r.months())),
            refused,
            said));
  }

  private static String line(Kept k) {
    return AT.format(k.made()) + ": " + Notes.counted(k.counts().of("athlete"), "athlete") + ", " + Notes.counted(k.counts().of("rep"), "rep");
  }
}
