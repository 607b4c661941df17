package boundwright.store;

import boundwright.pairing.Owner;
import boundwright.pairing.Phone;
import boundwright.pairing.PhoneRepository;
import boundwright.pairing.PhoneRights;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Phones and pairing codes in the database. */
final class SqlPhones implements PhoneRepository {
  private static final String SELECT = "SELECT id, name, rights, account_id, club_id, sealed, since, last_seen FROM phone ";

  private final Database database;

  SqlPhones(Database database) {
    this.database = database;
  }

  @Override
  public void offer(String codeHash, PhoneRights rights, Owner owner, Instant made, Instant until) {
    database.write(
        h -> {
          h.createUpdate("DELETE FROM phone_code WHERE until <= :now").bind("now", made.getEpochSecond()).execute();
          return h.createUpdate("INSERT INTO phone_code (code, rights, account_id, club_id, made, until) VALUES (:code, :rights, :account, :club, :made, :until)")
              .bind("code", codeHash)
              .bind("rights", rights.name())
              .bind("account", owner.account())
              .bind("club", owner.club())
              .bind("made", made.getEpochSecond())
              .bind("until", until.getEpochSecond())
              .execute();
        });
  }

  @Override
  public Optional<PhoneRights> offered(String codeHash, Instant now) {
    return database.read(h -> offered(h, codeHash, now).map(Code::rights));
  }

  private record Code(PhoneRights rights, Owner owner) {}

  private static Optional<Code> offered(Handle h, String codeHash, Instant now) {
    // a clock that was set back must not make a code last longer
    return h.createQuery("SELECT rights, account_id, club_id FROM phone_code WHERE code = :code AND made <= :now AND until > :now")
        .bind("code", codeHash)
        .bind("now", now.getEpochSecond())
        .map((r, c) -> new Code(rights(r.getString("rights")), owner(r)))
        .findOne();
  }

  private static Owner owner(ResultSet r) throws SQLException {
    long account = r.getLong("account_id");
    return new Owner(r.wasNull() ? null : (Long) account, r.getLong("club_id"));
  }

  @Override
  public int withdrawAll() {
    return database.write(h -> h.createUpdate("DELETE FROM phone_code").execute());
  }

  @Override
  public Optional<Phone> take(String codeHash, Instant now, String name, String secretHash, boolean sealed) {
    return database.write(
        h ->
            offered(h, codeHash, now)
                .map(
                    offer -> {
                      h.createUpdate("DELETE FROM phone_code WHERE code = :code").bind("code", codeHash).execute();
                      long id =
                          h.createUpdate(
                                  "INSERT INTO phone (name, secret, rights, account_id, club_id, sealed, since, last_seen)"
                                      + " VALUES (:name, :secret, :rights, :account, :club, :sealed, :now, :now)")
                              .bind("name", name)
                              .bind("secret", secretHash)
                              .bind("rights", offer.rights().name())
                              .bind("account", offer.owner().account())
                              .bind("club", offer.owner().club())
                              .bind("sealed", sealed ? 1 : 0)
                              .bind("now", now.getEpochSecond())
                              .executeAndReturnGeneratedKeys("id")
                              .mapTo(Long.class)
                              .one();
                      Instant kept = Instant.ofEpochSecond(now.getEpochSecond());
                      return new Phone(id, name, offer.rights(), offer.owner(), sealed, kept, kept);
                    }));
  }

  @Override
  public Optional<Phone> bySecret(String secretHash) {
    return database.read(h -> h.createQuery(SELECT + "WHERE secret = :secret").bind("secret", secretHash).map(SqlPhones::phone).findOne());
  }

  @Override
  public void seen(long id, Instant now) {
    database.write(h -> h.createUpdate("UPDATE phone SET last_seen = :now WHERE id = :id").bind("now", now.getEpochSecond()).bind("id", id).execute());
  }

  @Override
  public List<Phone> all() {
    return database.read(h -> h.createQuery(SELECT + "ORDER BY id").map(SqlPhones::phone).list());
  }

  @Override
  public boolean allow(long id, PhoneRights rights) {
    return database.write(h -> h.createUpdate("UPDATE phone SET rights = :rights WHERE id = :id").bind("rights", rights.name()).bind("id", id).execute()) > 0;
  }

  @Override
  public boolean revoke(long id) {
    return database.write(h -> h.createUpdate("DELETE FROM phone WHERE id = :id").bind("id", id).execute()) > 0;
  }

  @Override
  public int revokeAll() {
    return database.write(
        h -> {
          h.createUpdate("DELETE FROM phone_code").execute();
          return h.createUpdate("DELETE FROM phone").execute();
        });
  }

  private static Phone phone(ResultSet r, StatementContext context) throws SQLException {
    return new Phone(
        r.getLong("id"),
        r.getString("name"),
        rights(r.getString("rights")),
        owner(r),
        r.getInt("sealed") == 1,
        Instant.ofEpochSecond(r.getLong("since")),
        Instant.ofEpochSecond(r.getLong("last_seen")));
  }

  private static PhoneRights rights(String word) {
    return Columns.word(PhoneRights.class, "right of a phone", word);
  }
}
