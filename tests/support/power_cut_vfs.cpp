// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/power_cut_vfs.h"

#include <sqlite3.h>

#include <cstring>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace levelbar::tests {

namespace {

using Bytes = std::vector<char>;

// What lies on the disk, and what the file looks like to the running program.
struct Image {
    Bytes durable;
    Bytes current;
    bool isDurable = false; // whether the file itself survives
};

struct World {
    std::map<std::string, Image> files;
    std::int64_t operations = 0;
    std::int64_t cutAt = 0; // 0: never
    bool isCut = false;

    // Counts an operation that changes the disk; false when the power is gone.
    bool step()
    {
        if (isCut) {
            return false;
        }
        ++operations;
        isCut = cutAt > 0 && operations >= cutAt;
        return !isCut;
    }
};

World& world()
{
    static World instance;
    return instance;
}

struct File {
    sqlite3_file base;
    sqlite3_file* inner;
    std::string* path; // null: a temporary file, not watched
};

File* self(sqlite3_file* file)
{
    return reinterpret_cast<File*>(file);
}

sqlite3_vfs* innerVfs()
{
    return sqlite3_vfs_find("unix");
}

int closeFile(sqlite3_file* file)
{
    File* me = self(file);
    const int code =
        me->inner->pMethods != nullptr ? me->inner->pMethods->xClose(me->inner) : SQLITE_OK;
    ::operator delete(me->inner);
    delete me->path;
    return code;
}

int readFile(sqlite3_file* file, void* to, int size, sqlite3_int64 at)
{
    return self(file)->inner->pMethods->xRead(self(file)->inner, to, size, at);
}

int writeFile(sqlite3_file* file, const void* from, int size, sqlite3_int64 at)
{
    File* me = self(file);
    if (me->path != nullptr) {
        if (!world().step()) {
            return SQLITE_IOERR_WRITE;
        }
        Bytes& bytes = world().files[*me->path].current;
        const auto end = static_cast<std::size_t>(at) + static_cast<std::size_t>(size);
        bytes.resize(std::max(bytes.size(), end));
        std::memcpy(bytes.data() + at, from, static_cast<std::size_t>(size));
    }
    return me->inner->pMethods->xWrite(me->inner, from, size, at);
}

int truncateFile(sqlite3_file* file, sqlite3_int64 size)
{
    File* me = self(file);
    if (me->path != nullptr) {
        if (!world().step()) {
            return SQLITE_IOERR_TRUNCATE;
        }
        world().files[*me->path].current.resize(static_cast<std::size_t>(size));
    }
    return me->inner->pMethods->xTruncate(me->inner, size);
}

int syncFile(sqlite3_file* file, int flags)
{
    File* me = self(file);
    if (me->path != nullptr) {
        if (!world().step()) {
            return SQLITE_IOERR_FSYNC;
        }
        Image& image = world().files[*me->path];
        image.durable = image.current;
        image.isDurable = true;
    }
    return me->inner->pMethods->xSync(me->inner, flags);
}

int fileSize(sqlite3_file* file, sqlite3_int64* size)
{
    return self(file)->inner->pMethods->xFileSize(self(file)->inner, size);
}

int lockFile(sqlite3_file* file, int level)
{
    return self(file)->inner->pMethods->xLock(self(file)->inner, level);
}

int unlockFile(sqlite3_file* file, int level)
{
    return self(file)->inner->pMethods->xUnlock(self(file)->inner, level);
}

int checkReserved(sqlite3_file* file, int* result)
{
    return self(file)->inner->pMethods->xCheckReservedLock(self(file)->inner, result);
}

int control(sqlite3_file* file, int operation, void* argument)
{
    return self(file)->inner->pMethods->xFileControl(self(file)->inner, operation, argument);
}

int sectorSize(sqlite3_file* file)
{
    return self(file)->inner->pMethods->xSectorSize(self(file)->inner);
}

int characteristics(sqlite3_file* /*file*/)
{
    return 0; // nothing is promised: the worst disk
}

int shmMap(sqlite3_file* file, int page, int size, int extend, volatile void** to)
{
    return self(file)->inner->pMethods->xShmMap(self(file)->inner, page, size, extend, to);
}

int shmLock(sqlite3_file* file, int offset, int n, int flags)
{
    return self(file)->inner->pMethods->xShmLock(self(file)->inner, offset, n, flags);
}

void shmBarrier(sqlite3_file* file)
{
    self(file)->inner->pMethods->xShmBarrier(self(file)->inner);
}

int shmUnmap(sqlite3_file* file, int isDelete)
{
    return self(file)->inner->pMethods->xShmUnmap(self(file)->inner, isDelete);
}

const sqlite3_io_methods kMethods = {2,
                                     closeFile,
                                     readFile,
                                     writeFile,
                                     truncateFile,
                                     syncFile,
                                     fileSize,
                                     lockFile,
                                     unlockFile,
                                     checkReserved,
                                     control,
                                     sectorSize,
                                     characteristics,
                                     shmMap,
                                     shmLock,
                                     shmBarrier,
                                     shmUnmap,
                                     nullptr,
                                     nullptr};

int openFile(sqlite3_vfs* /*vfs*/, const char* path, sqlite3_file* file, int flags, int* outFlags)
{
    File* me = self(file);
    me->path = path != nullptr ? new std::string(path) : nullptr;
    me->inner =
        static_cast<sqlite3_file*>(::operator new(static_cast<std::size_t>(innerVfs()->szOsFile)));
    std::memset(me->inner, 0, static_cast<std::size_t>(innerVfs()->szOsFile));
    const int code = innerVfs()->xOpen(innerVfs(), path, me->inner, flags, outFlags);
    me->base.pMethods = &kMethods;
    if (code != SQLITE_OK) {
        ::operator delete(me->inner);
        delete me->path;
        me->base.pMethods = nullptr;
        return code;
    }
    if (me->path != nullptr && world().files.find(*me->path) == world().files.end()) {
        std::ostringstream bytes;
        bytes << std::ifstream(*me->path, std::ios::binary).rdbuf();
        const std::string text = bytes.str();
        Image image;
        image.current.assign(text.begin(), text.end());
        image.durable = image.current;
        // What was there before is on the disk; a new file is not yet.
        image.isDurable = !image.current.empty() || (flags & SQLITE_OPEN_MAIN_DB) != 0;
        world().files[*me->path] = std::move(image);
    }
    return SQLITE_OK;
}

int deleteFile(sqlite3_vfs* /*vfs*/, const char* path, int syncFolder)
{
    if (!world().step()) {
        return SQLITE_IOERR_DELETE;
    }
    world().files.erase(path);
    return innerVfs()->xDelete(innerVfs(), path, syncFolder);
}

sqlite3_vfs& shim()
{
    static sqlite3_vfs vfs = [] {
        sqlite3_vfs made = *innerVfs();
        static const std::string kName = PowerCutVfs::name();
        made.zName = kName.c_str();
        made.szOsFile = sizeof(File);
        made.pNext = nullptr;
        made.xOpen = openFile;
        made.xDelete = deleteFile;
        return made;
    }();
    return vfs;
}

} // namespace

PowerCutVfs::PowerCutVfs()
{
    world() = World{};
    sqlite3_vfs_register(&shim(), 0);
}

PowerCutVfs::~PowerCutVfs()
{
    sqlite3_vfs_unregister(&shim());
}

void PowerCutVfs::cutAt(std::int64_t operation)
{
    world() = World{}; // files of an earlier run are none of this one's
    world().cutAt = operation;
}

bool PowerCutVfs::isCut() const
{
    return world().isCut;
}

std::int64_t PowerCutVfs::operations() const
{
    return world().operations;
}

void PowerCutVfs::restore(const std::filesystem::path& folder) const
{
    for (const auto& [path, image] : world().files) {
        if (image.isDurable) {
            std::ofstream out(folder / std::filesystem::path(path).filename(), std::ios::binary);
            out.write(image.durable.data(), static_cast<std::streamsize>(image.durable.size()));
        }
    }
}

} // namespace levelbar::tests
