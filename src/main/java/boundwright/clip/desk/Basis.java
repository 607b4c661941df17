package boundwright.clip.desk;

import boundwright.clip.propose.Proposer;

/**
 * What decides over a clip's contacts and lengths beside its record. Whoever keeps a reading in memory keeps it under this too.
 *
 * @param stood whether the coach said that the camera stood still
 * @param reader who says which foot stands
 */
public record Basis(boolean stood, Proposer reader) {}
