package boundwright.store.account;

import boundwright.account.Passkey;
import boundwright.account.PasskeyRepository;
import boundwright.quantity.RefusedException;
import boundwright.store.Transactions;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Passkeys in the first club's store. */
public final class SqlPasskeys implements PasskeyRepository {
  private static final String SELECT = "SELECT credential, account_id, key, counter, name, since FROM passkey ";

  private final Transactions store;

  /** In this store. */
  public SqlPasskeys(Transactions store) {
    this.store = store;
  }

  @Override
  public void ask(String challenge, @Nullable Long account, Instant now, Instant until) {
    store.write(
        h -> {
          h.createUpdate("DELETE FROM passkey_challenge WHERE until <= :now").bind("now", now.getEpochSecond()).execute();
          return h.createUpdate("INSERT INTO passkey_challenge (challenge, account_id, until) VALUES (:challenge, :account, :until)")
              .bind("challenge", challenge)
              .bind("account", account)
              .bind("until", until.getEpochSecond())
              .execute();
        });
  }

  @Override
  public boolean answered(String challenge, @Nullable Long account, Instant now) {
    return store.write(
        h -> {
          Optional<Long> whose =
              h.createQuery("SELECT coalesce(account_id, 0) FROM passkey_challenge WHERE challenge = :challenge AND until > :now")
                  .bind("challenge", challenge)
                  .bind("now", now.getEpochSecond())
                  .mapTo(Long.class)
                  .findOne();
          h.createUpdate("DELETE FROM passkey_challenge WHERE challenge = :challenge").bind("challenge", challenge).execute();
          return whose.isPresent() && whose.get() == (account == null ? 0L : account);
        });
  }

  @Override
  public void add(Passkey passkey) {
    store.write(
        h -> {
          if (byCredential(passkey.credential()).isPresent()) {
            throw new RefusedException("This passkey is kept already. Nothing was changed.");
          }
          return h.createUpdate("INSERT INTO passkey (credential, account_id, key, counter, name, since) VALUES (:credential, :account, :key, :counter, :name, :since)")
              .bind("credential", passkey.credential())
              .bind("account", passkey.accountId())
              .bind("key", passkey.key())
              .bind("counter", passkey.counter())
              .bind("name", passkey.name())
              .bind("since", passkey.since().getEpochSecond())
              .execute();
        });
  }

  @Override
  public Optional<Passkey> byCredential(String credential) {
    return store.read(h -> h.createQuery(SELECT + "WHERE credential = :credential").bind("credential", credential).map((r, c) -> passkey(r)).findOne());
  }

  @Override
  public List<Passkey> of(long account) {
    return store.read(h -> h.createQuery(SELECT + "WHERE account_id = :account ORDER BY since, credential").bind("account", account).map((r, c) -> passkey(r)).list());
  }

  private static Passkey passkey(ResultSet r) throws SQLException {
    return new Passkey(
        r.getString("credential"), r.getLong("account_id"), r.getString("key"), r.getLong("counter"), r.getString("name"), Instant.ofEpochSecond(r.getLong("since")));
  }

  @Override
  public void used(String credential, long counter) {
    store.write(
        h -> h.createUpdate("UPDATE passkey SET counter = :counter WHERE credential = :credential").bind("counter", counter).bind("credential", credential).execute());
  }

  @Override
  public boolean remove(long account, String credential) {
    return store.write(
            h ->
                h.createUpdate("DELETE FROM passkey WHERE credential = :credential AND account_id = :account")
                    .bind("credential", credential)
                    .bind("account", account)
                    .execute())
        > 0;
  }
}
