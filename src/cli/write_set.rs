//! A folder of sheets, replaced whole or left as it was.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use crate::findings::Problem;

/// The list of the files of a set, so that the next set can take away those that it no longer has. Sheets and templates
/// have a list each, so that both may lie in one folder.
pub const SHEETS: &str = "sheets.txt";
/// The list of templates.
pub const TEMPLATES: &str = "templates.txt";

/// Puts files into a folder. Everything is first written beside its place; then old files make way for new ones, and if any
/// step fails all that was moved is moved back. With `whole`, sheets of the last set that this one lacks are taken away.
pub fn replace(folder: &Path, files: &[(String, Vec<u8>)], whole: bool, list: &str) -> Result<(), Problem> {
    let trouble = |error: io::Error| {
        Problem::new(
            format!("`{}` can't be written: {error}; what was there before is untouched", folder.display()),
            "choose another folder with --out, or make room in it",
        )
    };
    if folder.exists() && !folder.is_dir() {
        return Err(Problem::new(
            format!("`{}` is a file, not a folder", folder.display()),
            "choose another folder with --out",
        ));
    }
    let made = first_missing(folder);
    fs::create_dir_all(folder).map_err(trouble)?;
    let result = staged(folder, files, whole, list).map_err(trouble);
    if let (Err(_), Some(made)) = (&result, made) {
        remove_empty(folder, &made);
    }
    result
}

/// The outermost folder of a path that isn't there yet.
fn first_missing(folder: &Path) -> Option<PathBuf> {
    folder.ancestors().take_while(|path| !path.as_os_str().is_empty() && !path.exists()).last().map(Path::to_path_buf)
}

/// Takes away folders that were made for nothing, innermost first.
fn remove_empty(folder: &Path, outermost: &Path) {
    for path in folder.ancestors() {
        if fs::remove_dir(path).is_err() || path == outermost {
            return;
        }
    }
}

fn staged(folder: &Path, files: &[(String, Vec<u8>)], whole: bool, list_name: &str) -> io::Result<()> {
    let stage = tempfile::Builder::new().prefix(".faceline-").tempdir_in(folder)?;
    let (fresh, old) = (stage.path().join("new"), stage.path().join("old"));
    fs::create_dir(&fresh)?;
    fs::create_dir(&old)?;
    let listed = listed(folder, list_name);
    let mut list: Vec<String> = files.iter().map(|(name, _)| name.clone()).collect();
    if !whole {
        list.extend(listed.iter().filter(|name| folder.join(name).is_file()).cloned());
    }
    list.sort();
    list.dedup();
    for (name, bytes) in files {
        write_synced(&fresh.join(name), bytes)?;
    }
    write_synced(&fresh.join(list_name), (list.join("\n") + "\n").as_bytes())?;
    let gone = listed.into_iter().filter(|name| whole && !list.contains(name));
    let mut moves: Vec<(PathBuf, PathBuf)> = Vec::new();
    for name in gone.filter(|name| folder.join(name).is_file()) {
        moves.push((folder.join(&name), old.join(&name)));
    }
    for name in files.iter().map(|(name, _)| name.as_str()).chain([list_name]) {
        let target = folder.join(name);
        if target.symlink_metadata().is_ok() {
            moves.push((target.clone(), old.join(name)));
        }
        moves.push((fresh.join(name), target));
    }
    move_all(&moves)
}

/// Renames in order; on a failure renames back in reverse.
fn move_all(moves: &[(PathBuf, PathBuf)]) -> io::Result<()> {
    for (done, (from, to)) in moves.iter().enumerate() {
        if let Err(error) = fs::rename(from, to) {
            for (from, to) in moves[..done].iter().rev() {
                let _ = fs::rename(to, from);
            }
            return Err(error);
        }
    }
    Ok(())
}

fn write_synced(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = File::create(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// Names in the last set's list that can only be its files: no path, and of a form that sets have.
fn listed(folder: &Path, list: &str) -> Vec<String> {
    let text = fs::read_to_string(folder.join(list)).unwrap_or_default();
    text.lines().map(str::trim).filter(|name| is_ours(name)).map(str::to_owned).collect()
}

/// A numbered sheet or picture, a part for machines, a list, the page for the browser, or a document. A list that somebody wrote
/// by hand can't name anything outside the folder, nor anything hidden.
fn is_ours(name: &str) -> bool {
    let plain = name.len() < 200
        && !name.starts_with('.')
        && !name.contains("..")
        && !name.chars().any(|c| c.is_control() || matches!(c, '/' | '\\' | ':'));
    let spelt = |text: &str| text.chars().all(|c| c.is_ascii_alphanumeric() || c == '-');
    let numbered = |base: &str| base.starts_with(|c: char| c.is_ascii_digit()) && spelt(base);
    let form = match name.rsplit_once('.') {
        Some((base, "svg" | "png")) => numbered(base),
        Some((base, "dxf")) => base.starts_with("cut-") && spelt(base),
        Some((base, "csv")) => base.starts_with("list-") && spelt(base),
        Some((_, "pdf" | "xlsx")) => true,
        _ => matches!(name, "index.html" | "templates.json"),
    };
    plain && form
}

#[cfg(test)]
mod tests {
    use super::{SHEETS, is_ours, replace};
    use std::fs;

    fn file(name: &str, text: &str) -> (String, Vec<u8>) {
        (name.to_owned(), text.as_bytes().to_vec())
    }

    #[test]
    fn a_new_set_takes_the_place_of_the_old_and_leaves_strangers_alone() {
        let home = tempfile::tempdir().expect("a folder");
        let out = home.path().join("a/b");
        replace(&out, &[file("01-plan.svg", "one"), file("02-front.svg", "two")], true, SHEETS).expect("written");
        fs::write(out.join("notes.txt"), "mine").expect("written");
        replace(&out, &[file("01-plan.svg", "three")], true, SHEETS).expect("written");
        assert_eq!(fs::read_to_string(out.join("01-plan.svg")).expect("there"), "three");
        assert!(!out.join("02-front.svg").exists());
        assert_eq!(fs::read_to_string(out.join("notes.txt")).expect("there"), "mine");
        assert_eq!(fs::read_dir(&out).expect("there").count(), 3);
    }

    #[test]
    fn a_part_of_a_set_leaves_the_rest() {
        let home = tempfile::tempdir().expect("a folder");
        replace(home.path(), &[file("01-plan.svg", "one"), file("02-front.svg", "two")], true, SHEETS)
            .expect("written");
        replace(home.path(), &[file("02-front.svg", "new")], false, SHEETS).expect("written");
        assert_eq!(fs::read_to_string(home.path().join("01-plan.svg")).expect("there"), "one");
        assert_eq!(fs::read_to_string(home.path().join("02-front.svg")).expect("there"), "new");
    }

    #[test]
    fn when_one_file_cannot_be_replaced_none_is() {
        let home = tempfile::tempdir().expect("a folder");
        replace(home.path(), &[file("01-plan.svg", "one")], true, SHEETS).expect("written");
        // The second target's old content can't be moved aside: its staged name would lie in a folder that isn't there.
        let bad = [file("01-plan.svg", "new"), file("x/02.svg", "two")];
        replace(home.path(), &bad, true, SHEETS).expect_err("no such folder");
        assert_eq!(fs::read_to_string(home.path().join("01-plan.svg")).expect("there"), "one");
        assert_eq!(fs::read_dir(home.path()).expect("there").count(), 2);
    }

    #[test]
    fn a_list_written_by_hand_takes_nothing_of_anybody_else() {
        for name in [
            "01-plan.svg",
            "12-front-elevation-2.png",
            "cut-front-a.dxf",
            "index.html",
            "my job.pdf",
            "list-feet.csv",
            "a.xlsx",
        ] {
            assert!(is_ours(name), "{name}");
        }
        for name in [
            "../a.pdf",
            "/etc/a.pdf",
            ".a.pdf",
            "notes.txt",
            "logo.svg",
            "photo.png",
            "plan.dxf",
            "money.csv",
            "a\\b.pdf",
            "C:a.pdf",
        ] {
            assert!(!is_ours(name), "{name}");
        }
    }
}
