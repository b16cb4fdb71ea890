package easewright.answering;

import easewright.clinic.Caller;
import easewright.clinic.ClinicStore;
import easewright.clinic.OnePhotoTooMany;
import easewright.clinic.Photo;
import easewright.photo.PhotoCleaner;
import easewright.request.PhotoUpload;
import easewright.rulebook.RuleBookSource;
import jakarta.inject.Singleton;

/** Adds photos to cases. */
@Singleton
public class PhotoService {
  private final ClinicStore store;
  private final RuleBookService rules;
  private final PhotoCleaner cleaner = new PhotoCleaner();

  PhotoService(ClinicStore store, RuleBookService rules) {
    this.store = store;
    this.rules = rules;
  }

  /**
   * Writes a photo anew and keeps it.
   *
   * @throws easewright.request.FaultyRequest naming every fault of the form
   */
  public Photo add(Caller caller, String caseId, PhotoUpload upload) {
    RuleBookSource book = rules.edition().book().source();
    PhotoUpload.Checked checked = rules.inTime(() -> upload.checked(book, cleaner));
    try {
      return store.photos().add(caller, caseId, checked.round(), checked.alt(), checked.photo());
    } catch (OnePhotoTooMany full) {
      throw PhotoUpload.oneTooMany(book);
    }
  }
}
