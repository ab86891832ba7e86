# What `cmake --install` lays where, and the Debian package that `cpack` makes of it.
include(GNUInstallDirs)
set(desktop ${PROJECT_SOURCE_DIR}/resources/desktop)
configure_file(${desktop}/tiepoint.metainfo.xml.in ${CMAKE_CURRENT_BINARY_DIR}/tiepoint.metainfo.xml @ONLY)
configure_file(${desktop}/tiepoint.1.in ${CMAKE_CURRENT_BINARY_DIR}/tiepoint.1 @ONLY)

install(TARGETS tiepoint RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(FILES ${desktop}/local.tiepoint.Tiepoint.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES ${desktop}/tiepoint-mime.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages RENAME tiepoint.xml)
install(FILES ${PROJECT_SOURCE_DIR}/resources/icons/tiepoint.svg DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/tiepoint.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo
        RENAME local.tiepoint.Tiepoint.metainfo.xml)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/tiepoint.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${PROJECT_SOURCE_DIR}/LICENSE DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/tiepoint RENAME copyright)
install(FILES ${PROJECT_SOURCE_DIR}/README.md DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/tiepoint)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/resources/benches/ ${PROJECT_SOURCE_DIR}/resources/lessons/
        ${PROJECT_SOURCE_DIR}/resources/exercises/ DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/tiepoint/examples
        FILES_MATCHING PATTERN "*.bench.json" PATTERN "*.lesson.json")

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME tiepoint)
set(CPACK_PACKAGE_CONTACT "The Tiepoint authors <tiepoint@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "breadboard bench that shows what the metal hides")
set(CPACK_PACKAGE_DESCRIPTION "Parts are pushed into the holes of a solderless breadboard on the screen, and the
circuit that was really built runs at once: light, current and voltage are solved
and shown live, and what is wrong is told with its place.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION education)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "fonts-inter")
set(CPACK_OUTPUT_FILE_PREFIX ${CMAKE_BINARY_DIR}/packages)
include(CPack)
