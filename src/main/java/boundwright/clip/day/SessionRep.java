package boundwright.clip.day;

import boundwright.clip.session.FilmRep;
import org.jspecify.annotations.Nullable;

/**
 * One rep of a session's film as it is kept.
 *
 * @param id number in the store, 0 before it is stored
 * @param filmId which film
 * @param cut what the film shows
 * @param setAside the coach says that it is no rep
 * @param athleteId who it was, as the coach said, or null
 * @param clipId its reading, or 0
 * @param tapRepId the rep tapped at the track that it is, or 0
 * @param measured whether its lengths were added to that rep
 */
public record SessionRep(
    long id, long filmId, FilmRep cut, boolean setAside, @Nullable Long athleteId, long clipId, long tapRepId, boolean measured) {}
