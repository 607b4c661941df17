package boundwright.store;

import boundwright.store.backup.BackupSettings;
import boundwright.store.backup.Rotation;
import boundwright.store.engine.Database;
import boundwright.store.rows.SettingRows;
import java.time.LocalDate;
import java.util.Optional;

/** What is kept of backups, with the other settings. */
final class SqlBackups implements BackupSettings {
  private static final String DAYS = "backup.days";
  private static final String WEEKS = "backup.weeks";
  private static final String MONTHS = "backup.months";
  private static final String FILMS = "backup.films";
  private static final String LEFT = "backup.left";
  private static final String SINCE = "backup.since";
  private static final String NUMBER = "1";

  private final Database database;
  private final SqlSettings settings;

  SqlBackups(Database database, SqlSettings settings) {
    this.database = database;
    this.settings = settings;
  }

  @Override
  public Rotation rotation() {
    SettingRows kept = database.read(SettingRows::read);
    Rotation usual = Rotation.USUAL;
    return new Rotation(kept.whole(DAYS, usual.days()), kept.whole(WEEKS, usual.weeks()), kept.whole(MONTHS, usual.months()));
  }

  @Override
  public void keep(Rotation rotation, boolean films) {
    database.write(
        h -> {
          SettingRows.keep(h, DAYS, rotation.days(), NUMBER);
          SettingRows.keep(h, WEEKS, rotation.weeks(), NUMBER);
          SettingRows.keep(h, MONTHS, rotation.months(), NUMBER);
          SettingRows.keep(h, FILMS, films ? "yes" : "no");
          return rotation;
        });
  }

  @Override
  public boolean films() {
    return database.read(SettingRows::read).word(FILMS, "no").equals("yes");
  }

  @Override
  public Optional<LocalDate> left() {
    return day(LEFT);
  }

  @Override
  public void leftOn(LocalDate day) {
    keep(LEFT, day);
  }

  @Override
  public Optional<LocalDate> since() {
    return day(SINCE);
  }

  @Override
  public void since(LocalDate day) {
    keep(SINCE, day);
  }

  @Override
  public int squad() {
    return settings.invented() ? 0 : database.read(h -> h.createQuery("SELECT count(*) FROM athlete").mapTo(Integer.class).one());
  }

  private Optional<LocalDate> day(String key) {
    String kept = database.read(SettingRows::read).word(key, "");
    return kept.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(kept));
  }

  private void keep(String key, LocalDate day) {
    database.write(
        h -> {
          SettingRows.keep(h, key, day.toString());
          return day;
        });
  }
}
